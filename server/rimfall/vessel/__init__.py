"""The craft around a habitat as rigid bodies: mass properties, momentum, balance, attitude, strength. numpy and physics alone."""
