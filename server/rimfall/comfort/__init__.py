"""What people would feel aboard: figures from radius, spin and a person; published limits beside them; a habitat to wish for."""
