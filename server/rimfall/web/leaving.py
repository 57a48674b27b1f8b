"""An answer that ends with whoever asked for it."""

import asyncio


async def until_left(receive, answering):
    """Awaits the coroutine that answers, and ends it where whoever asked has gone. Raises what it raises."""
    answer, leaving = asyncio.ensure_future(answering), asyncio.ensure_future(_left(receive))
    try:
        await asyncio.wait((answer, leaving), return_when=asyncio.FIRST_COMPLETED)
        if answer.done():
            answer.result()
    finally:
        answer.cancel()
        leaving.cancel()
        await asyncio.gather(answer, leaving, return_exceptions=True)


async def _left(receive):
    """Returns once whoever asked has gone."""
    while (await receive())["type"] != "http.disconnect":
        continue
