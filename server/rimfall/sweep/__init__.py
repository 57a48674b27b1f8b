"""Many scenes at once: every combination of a few varied values, worked out on this machine's cores or on a cluster.

parameters.py reads what is varied, grid.py makes and checks the combinations, job.py does one, local.py and cluster.py do many,
folder.py keeps what came of each, lock.py keeps other runs out of the folder, contact_sheet.py draws them side by side, run.py puts it
all together.
"""
