"""Would the ship cope? The craft as a document, and one module a finding."""
