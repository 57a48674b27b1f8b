"""Coroutines run to their end in a thread of their own."""

import asyncio
import concurrent.futures


def run_apart(coroutine):
    """As asyncio.run, from where a loop runs already: Playwright's stays in a test worker's main thread while its browser lives."""
    with concurrent.futures.ThreadPoolExecutor(1) as thread:
        return thread.submit(asyncio.run, coroutine).result()
