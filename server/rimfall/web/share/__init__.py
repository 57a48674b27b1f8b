"""Others follow on their phones: who may ask what while the local network is served, what goes out to all, and what they place.

room.py        one show: its keys, limits and publisher, and who is in it
keys.py        the presenter's key and the followers'
doors.py       every request: the presenter's, a follower's, or refused
limits.py      how much one address may ask for
board.py       what is told to all, the newest of each sort
stream.py      a board to one reader, as server-sent events
publisher.py   what one process knows and keeps of a show
relay.py       the same for several, by Redis
messages.py    what the presenter's page tells, and what a follower places
refusals.py    who may not, and who asks too often
connection.py  how many connections an address may have, and that there is always one for the presenter
routes.py      the addresses
addresses.py   where followers find it, and its QR code
"""
