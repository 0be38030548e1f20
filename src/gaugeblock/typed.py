"""What a public function is given from Python: each option of the kind that it takes, or refused by its name.

The command line gives text alone and does not pass here. Kinds are read from the annotations, which are text and load
nothing.
"""

from __future__ import annotations

from functools import wraps

from gaugeblock.errors import InputError, visible

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Callable, Iterator, Mapping
    from typing import Any

_NAMED, _REST = 0x04, 0x08  # of a function that takes more words, or more options, than it names
_WORDS = {
    "str": "text",
    "bool": "True or False",
    "Sequence": "a list of texts",
    "list": "a list of texts",
    "Mapping": "a dictionary",
    "dict": "a dictionary",
    "Callable": "a function",
    "Refdata": "the tables",
}
_LISTS, _MAPPINGS = ("Sequence", "list"), ("Mapping", "dict")
_KEPT: dict[str, tuple[tuple[str, str], ...]] = {}


def guarded(function: Callable[..., Any], name: str) -> Callable[..., Any]:
    """The function as it stands in the face under ``name``: what it is given is of the kinds that it takes, or an
    InputError names the option.
    """
    inner = innermost(function)

    @wraps(function)
    def asked(*args: Any, **options: Any) -> Any:
        check(inner, args, options)
        return function(*args, **options)

    asked.__module__ = "gaugeblock"  # where it is found by its name: it can be sent to another process
    asked.__qualname__ = name
    return asked


def innermost(function: Callable[..., Any]) -> Callable[..., Any]:
    """A function under whatever it is wrapped in."""
    while hasattr(function, "__wrapped__"):
        function = function.__wrapped__
    return function


def takes_more(function: Callable[..., Any]) -> bool:
    """Whether a function takes options that it does not name each."""
    return bool(innermost(function).__code__.co_flags & _REST)


def needed_of(function: Callable[..., Any]) -> tuple[str, ...]:
    """What a function cannot be called without, by name and in its order."""
    inner = innermost(function)
    code, usual = inner.__code__, inner.__kwdefaults__ or {}
    words = code.co_varnames[: code.co_argcount - len(inner.__defaults__ or ())]
    named = code.co_varnames[code.co_argcount : code.co_argcount + code.co_kwonlyargcount]
    return (*words, *(name for name in named if name not in usual))


def check(function: Callable[..., Any], args: tuple[Any, ...], options: Mapping[str, Any]) -> None:
    """InputError for what is not of a kind that the function takes, and for text with nothing in it."""
    code, kinds = function.__code__, function.__annotations__
    names = code.co_varnames
    rest = code.co_argcount + code.co_kwonlyargcount
    more = kinds.get(names[rest], "object") if code.co_flags & _NAMED else ""
    for at, value in enumerate(args):
        if at < code.co_argcount:
            _check(value, kinds[names[at]], names[at])
        elif more:
            _check(value, more, names[rest])
    others = kinds.get(names[rest + bool(more)], "object") if code.co_flags & _REST else ""
    own = names[:rest]
    for name, value in options.items():
        if name in own:
            _check(value, kinds[name], name)
        elif others:
            _check(value, "str | None" if others.startswith("Unpack[") else others, name)


def _check(value: object, kind: str, name: str) -> None:
    kinds = _kinds(kind)
    for head, inside in kinds:
        if _is(value, head):
            if isinstance(value, str) and not value.strip():
                do = "say it, or leave it out"
                raise InputError("(blank)", _said(name), "nothing is written there", (), do)
            _check_each(value, head, inside, name)
            return
    raise InputError(*_refused(value, [head for head, _ in kinds], name))


def _check_each(value: Any, head: str, inside: str, name: str) -> None:
    """What stands in a list, or in a dictionary, is of its kind too."""
    if head in _LISTS:
        for one in value:
            _check(one, inside, name)
    elif head in _MAPPINGS and not inside.endswith(("Any", "object")):
        kind = inside.partition(", ")[2]
        for key, one in value.items():
            if one != "":  # of a dictionary a blank is what is not said, as in a job
                _check(one, kind, f"{name}.{visible(str(key))}")


def _is(value: object, head: str) -> bool:
    """Whether a value is of a kind, by the first word of its annotation."""
    if head in ("object", "Any"):
        return True
    if head == "None":
        return value is None
    if head in _LISTS:
        return isinstance(value, list | tuple)
    if head in _MAPPINGS:
        return hasattr(value, "keys") and hasattr(value, "items")
    if head == "Callable":
        return callable(value)
    return any(known.__name__ == head for known in type(value).__mro__)


def _kinds(kind: str) -> tuple[tuple[str, str], ...]:
    """``str | Sequence[str] | None`` -> each kind and what stands in it."""
    got = _KEPT.get(kind)
    if got is None:
        got = _KEPT[kind] = tuple(_parted(kind))
    return got


def _parted(kind: str) -> Iterator[tuple[str, str]]:
    depth, begin = 0, 0
    for at, sign in enumerate(f"{kind} |"):
        depth += (sign == "[") - (sign == "]")
        if sign == "|" and not depth:
            head, _, inside = kind[begin:at].strip().partition("[")
            yield head.rpartition(".")[2], inside.removesuffix("]")
            begin = at + 1


def _refused(value: object, heads: list[str], name: str) -> tuple[str, str, str, tuple[str, ...], str]:
    """The parts of a refusal: what came, of which option, what is wanted, what to do."""
    asked, said = visible(str(value)), _said(name)
    is_number = isinstance(value, int | float) and not isinstance(value, bool)
    if value is None:
        return "(nothing)", said, "it is needed, and None says nothing", (), f"say the {said}"
    wanted = " or ".join(_WORDS.get(head, f"a {head}") for head in heads if head != "None")
    if "Refdata" in heads:
        release = asked if isinstance(value, str) else ""
        do = f"give gaugeblock.refdata({repr(release) if release else ''})"
        return asked, said, "the tables themselves are wanted, as gaugeblock.refdata gives them", (), do
    if "str" in heads and is_number:
        do = f'write "{asked}", with its unit where it has one: "1 in"'
        return asked, said, "it is text, not a number", (), do
    return asked, said, f"{wanted} is wanted, not {_came(value)}", (), f"give {wanted}"


def _came(value: object) -> str:
    """What a value is, in plain words."""
    if isinstance(value, bool):
        return "true or false"
    known = ((str, "text"), (int | float, "a number"), (bytes | bytearray, "bytes"), (list | tuple, "a list"))
    return next((word for kind, word in (*known, (dict, "a dictionary")) if isinstance(value, kind)), "another thing")


def _said(name: str) -> str:
    return name.replace("_", " ")
