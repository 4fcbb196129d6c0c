"""Mutants: what a module's code becomes by one small mistake, such as ``<`` for ``<=``, found in its syntax tree."""

import ast
import copy
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from types import CodeType
from typing import Any, Final

_COMPARISONS: Final[dict[type[ast.cmpop], tuple[type[ast.cmpop], ...]]] = {
    ast.Lt: (ast.LtE, ast.GtE),
    ast.LtE: (ast.Lt, ast.Gt),
    ast.Gt: (ast.GtE, ast.LtE),
    ast.GtE: (ast.Gt, ast.Lt),
    ast.Eq: (ast.NotEq,),
    ast.NotEq: (ast.Eq,),
    ast.In: (ast.NotIn,),
    ast.NotIn: (ast.In,),
    ast.Is: (ast.IsNot,),
    ast.IsNot: (ast.Is,),
}
_ARITHMETIC: Final[dict[type[ast.operator], type[ast.operator]]] = {
    ast.Add: ast.Sub,
    ast.Sub: ast.Add,
    ast.Mult: ast.Div,
    ast.Div: ast.Mult,
    ast.FloorDiv: ast.Mult,
    ast.Mod: ast.Mult,
    ast.BitOr: ast.BitAnd,
    ast.BitAnd: ast.BitOr,
}
_EXTREMES: Final = {"min": "max", "max": "min", "any": "all", "all": "any"}


@dataclass(frozen=True)
class Mutant:
    """A module with one mistake in it.

    ``lines`` are those of the changed expression and of the head of its statement, ``inside`` names the function or
    class, ``change`` says what became of what, and ``code`` is the whole module, with the lines that it had.
    """

    line: int
    lines: frozenset[int]
    inside: str
    change: str
    code: CodeType


def mutants(source: str, name: str) -> Iterator[Mutant]:
    """Yield every mutant of a module, in the order of its code. Annotations, decorators and texts are left alone.

    Args:
        source: the module's text.
        name: its file, as tracebacks name it.
    """
    tree = ast.parse(source)
    same = compile(tree, name, "exec")
    for place in _places(tree, "", frozenset()):
        node = place.node
        for other in _others(node):
            before, after = ast.unparse(node), ast.unparse(other)
            at = node.iter if isinstance(node, ast.comprehension) else node
            place.put(_where(other, at))
            code = compile(tree, name, "exec")
            place.put(node)
            if code != same:
                lines = place.lines | _lines(at)
                yield Mutant(at.lineno, lines, place.inside, f"{before} -> {after}", code)


def _where(node: ast.AST, at: ast.AST) -> ast.AST:
    """Return what is put in another's place, with every part that has no position standing where that one stands."""
    if not isinstance(node, ast.comprehension) and getattr(node, "end_lineno", None) is None:
        ast.copy_location(node, at)
    return ast.fix_missing_locations(node)


@dataclass(frozen=True)
class _Place:
    """A statement or an expression, where it stands, and how to put another in its place."""

    node: Any
    inside: str
    lines: frozenset[int]
    put: Callable[[ast.AST], None]


def _places(parent: ast.AST, inside: str, lines: frozenset[int]) -> Iterator[_Place]:
    """Yield the places below a node that stands in a statement with these lines."""
    if isinstance(parent, ast.FunctionDef | ast.ClassDef):
        inside = f"{inside}.{parent.name}".lstrip(".")
    for field, value in ast.iter_fields(parent):
        if field in ("annotation", "returns", "decorator_list", "type_comment") or _is_a_type(parent, field):
            continue
        children = list(enumerate(value)) if isinstance(value, list) else [(None, value)]
        for index, child in children:
            if not isinstance(child, ast.AST) or _is_a_text(child) or _is_a_promise(child):
                continue
            below = _lines(child) if isinstance(child, ast.stmt) else lines
            if isinstance(child, ast.stmt | ast.expr | ast.comprehension):
                yield _Place(child, inside, below, _putting(parent, field, index))
            yield from _places(child, inside, below)


def _lines(node: Any) -> frozenset[int]:
    """Return the lines of an expression or a statement; of a compound one those of its head."""
    body = getattr(node, "body", None)
    if isinstance(body, list):
        return frozenset(range(node.lineno, max(body[0].lineno, node.lineno + 1)))
    return frozenset(range(node.lineno, node.end_lineno + 1))


def _putting(parent: ast.AST, field: str, index: int | None) -> Callable[[ast.AST], None]:
    def put(node: ast.AST) -> None:
        if index is None:
            setattr(parent, field, node)
        else:
            getattr(parent, field)[index] = node

    return put


def _is_a_type(parent: ast.AST, field: str) -> bool:
    """Say whether a field holds types: the second argument of isinstance, what a name of a type stands for."""
    if isinstance(parent, ast.Assign) and field == "value":
        return isinstance(parent.value, ast.Subscript | ast.BinOp) and ast.unparse(parent.targets[0])[:1].isupper()
    return isinstance(parent, ast.Subscript) and ast.unparse(parent.value) in ("Literal", "Callable", "Annotated")


def _is_a_text(node: ast.AST) -> bool:
    return isinstance(node, ast.Expr) and isinstance(node.value, ast.Constant)


def _is_a_promise(node: ast.AST) -> bool:
    """Say whether this is ``strict=True``: it says that two things are as long, and changes nothing while they are."""
    return isinstance(node, ast.keyword) and node.arg == "strict"


def _others(node: ast.AST) -> Iterator[ast.AST]:
    """Yield what may stand for a node by mistake."""
    match node:
        case ast.Compare(ops=ops):
            for index, op in enumerate(ops):
                for other in _COMPARISONS.get(type(op), ()):
                    changed = copy.deepcopy(node)
                    changed.ops[index] = other()
                    yield changed
        case ast.BinOp(op=op) if not _joins_types(node):
            other_op = _ARITHMETIC.get(type(op))
            if other_op is not None and not (isinstance(op, ast.Mod) and _is_string(node.left)):
                yield _with(node, op=other_op())
        case ast.AugAssign(op=op):
            if type(op) in _ARITHMETIC:
                yield _with(node, op=_ARITHMETIC[type(op)]())
            yield ast.Pass()
        case ast.BoolOp(op=op):
            yield _with(node, op=ast.Or() if isinstance(op, ast.And) else ast.And())
            for left_out in range(len(node.values)):
                values = [value for index, value in enumerate(node.values) if index != left_out]
                yield values[0] if len(values) == 1 else _with(node, values=values)
        case ast.UnaryOp(op=ast.Not() | ast.USub(), operand=operand):
            yield operand
        case ast.Constant(value=bool() as value):
            yield ast.Constant(not value)
        case ast.Constant(value=int() | float() as number):
            yield ast.Constant(number + 1)
            if number > 0:
                yield ast.Constant(number - 1)
        case ast.IfExp():
            yield node.body
            yield node.orelse
        case ast.comprehension(ifs=ifs) if ifs:
            yield _with(node, ifs=[])
        case ast.Call(func=ast.Name(id=name)) if name in _EXTREMES:
            yield _with(node, func=ast.Name(_EXTREMES[name], ast.Load()))
        case ast.Return(value=value) if value is not None and not _is_false(value):
            yield _with(node, value=ast.Constant(None))
        case ast.Expr(value=ast.Call() | ast.Yield() | ast.YieldFrom()):
            yield _nothing_for(node)
        case ast.Continue():
            yield ast.Break()
        case ast.Break():
            yield ast.Pass()


def _with(node: ast.AST, **fields: Any) -> Any:
    changed = copy.copy(node)
    for name, value in fields.items():
        setattr(changed, name, value)
    return changed


def _nothing_for(node: ast.Expr) -> ast.stmt:
    """Return a statement that does nothing; a generator stays one."""
    if isinstance(node.value, ast.Yield | ast.YieldFrom):
        return ast.Expr(ast.YieldFrom(ast.Tuple([], ast.Load())))
    return ast.Pass()


def _joins_types(node: ast.BinOp) -> bool:
    """Say whether this is a union of types, such as ``int | None``."""
    names = [ast.unparse(side).split(".")[-1] for side in (node.left, node.right)]
    return isinstance(node.op, ast.BitOr) and any(
        name[:1].isupper() or name in ("str", "int", "float") for name in names
    )


def _is_string(node: ast.AST) -> bool:
    return isinstance(node, ast.Constant) and isinstance(node.value, str)


def _is_false(node: ast.AST) -> bool:
    """Say whether this is None, or False, which is told from None nowhere."""
    return isinstance(node, ast.Constant) and (node.value is None or node.value is False)
