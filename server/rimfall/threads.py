"""How many threads the libraries of linear algebra run: variables of the environment, read when numpy is loaded."""

THREADS = ("OMP_NUM_THREADS", "OPENBLAS_NUM_THREADS", "MKL_NUM_THREADS", "VECLIB_MAXIMUM_THREADS")
