"""How wide a drawing for the page may be, and what limits of one's own are called where quantities are chosen."""

LEAST_PX, MOST_PX = 240, 1200
MINE = "mine"  # what stands for the limits of one's own among the quantities
