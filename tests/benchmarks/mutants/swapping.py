"""A mutant's code put into functions that live already, so that nothing has to be imported again."""

import gc
import inspect
from collections import Counter
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from types import CodeType, FunctionType


@dataclass(frozen=True)
class Swap:
    """The code objects of a module's functions that a mutant changes, before and after.

    ``at_import`` says that the module's or a class's own body is another too, so that swapping is not enough.
    """

    functions: tuple[tuple[CodeType, CodeType], ...]
    at_import: bool


def swap_of(original: CodeType, mutant: CodeType) -> Swap:
    """Return what is different between a module's code and that of its mutant."""
    before, after = dict(_named(original, ())), dict(_named(mutant, ()))
    pairs = [(before[name], after[name]) for name in before if name in after and before[name] != after[name]]
    functions = tuple(pair for pair in pairs if _is_a_function(pair[0]))
    bodies = [pair for pair in pairs if not _is_a_function(pair[0])]
    return Swap(functions, at_import=any(_own(one) != _own(other) for one, other in bodies))


def functions_of(files: frozenset[str]) -> list[FunctionType]:
    """Return every function of some modules that lives, wherever it is held."""
    found = (thing for thing in gc.get_objects() if isinstance(thing, FunctionType))
    return [function for function in found if function.__code__.co_filename in files]


def put_in(swap: Swap, functions: Iterable[FunctionType]) -> None:
    """Give the functions that a mutant changes the code that it has for them.

    Raises:
        ValueError: where a function would close over something else than before.
    """
    after = dict(swap.functions)
    for function in functions:
        code = function.__code__
        if code in after and code.co_filename == after[code].co_filename:
            function.__code__ = after[code]


def _is_a_function(code: CodeType) -> bool:
    return bool(code.co_flags & inspect.CO_OPTIMIZED)


def _named(code: CodeType, above: tuple[object, ...]) -> Iterator[tuple[tuple[object, ...], CodeType]]:
    """Yield a code object and all below it with a name for each: how it is called, its line, and the how-manieth."""
    yield above, code
    seen: Counter[tuple[str, int]] = Counter()
    for const in code.co_consts:
        if isinstance(const, CodeType):
            name = (const.co_name, const.co_firstlineno)
            yield from _named(const, (*above, name, seen[name]))
            seen[name] += 1


def _own(code: CodeType) -> CodeType:
    """Return a code object without those below it."""
    return code.replace(co_consts=tuple("code" if isinstance(c, CodeType) else c for c in code.co_consts))
