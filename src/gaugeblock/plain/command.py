"""``gaugeblock ask`` at the command line: any words, one answer."""

from __future__ import annotations

from gaugeblock.answer.command import common_options, parser_of, print_sheet, print_table

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.plain.given import Answer

SCREEN = 15  # lines
EXAMPLE = "gaugeblock ask 3/8-16 grade 8 anti-seize into aluminum"


def ask(argv: list[str]) -> int:
    """Run ``gaugeblock ask``; the exit code."""
    parser = parser_of(
        "ask",
        "A question in plain words. It says how it read the line, and names every word that it did not understand.",
        EXAMPLE,
    )
    parser.add_argument("words", nargs="+", metavar="WORDS", help="what you want to know, as you would say it")
    common_options(parser)
    a = parser.parse_args(argv)
    from gaugeblock.plain.answer import answer
    from gaugeblock.tables.load import refdata

    got = answer(" ".join(a.words), compare=a.compare, data=refdata(a.data_release))
    return print_answer_of(got, a.json, a.unit, a.why)


def print_answer_of(got: Answer, as_json: bool = False, unit: str | None = None, why: bool = False) -> int:
    """Print an answer, whatever it was found to be, and what else was asked; the exit code. A plain bolt beside a part
    that has no figure is shown where the screen has room for it, else how to ask for it.
    """
    from gaugeblock.plain.understand import PLAIN_BOLT

    if as_json and got.more:
        import json

        print(json.dumps(got.as_dict(), ensure_ascii=False, indent=2))
        return 0
    if not got.more:
        return _print_one(got, as_json, unit, why)
    code, text = _printed(got, as_json, unit, why)
    print(text)
    for other in got.more:
        also, more = _printed(other, as_json, unit, why)
        if other.read_as.endswith(PLAIN_BOLT) and not why and f"{text}\n\n{more}".count("\n") >= SCREEN:
            from gaugeblock.answer.text import fitted

            said = other.read_as.removesuffix(PLAIN_BOLT).partition(": ")[2].replace(",", "")
            print("\n".join(fitted(f"A plain bolt of this thread: ask {said}", 2, 4)))
            continue
        code = max(code, also)
        if not why and f"{text}\n\n{more}".count("\n") >= SCREEN:
            from gaugeblock.answer.text import fitted

            print("\n".join(fitted(f"Also: {other.read_as}. --why shows that too, or ask for it alone.", 2, 4)))
            continue
        print(f"\n{more}")
        text = f"{text}\n\n{more}"
    return code


def _printed(got: Answer, as_json: bool, unit: str | None, why: bool) -> tuple[int, str]:
    """The exit code of an answer, and what is printed of it."""
    import contextlib
    import io

    out = io.StringIO()
    with contextlib.redirect_stdout(out):
        code = _print_one(got, as_json, unit, why)
    return code, out.getvalue().removesuffix("\n")


def _print_one(got: Answer, as_json: bool, unit: str | None, why: bool) -> int:
    from gaugeblock.answer.sheet import Sheet
    from gaugeblock.answer.table import Table
    from gaugeblock.answer.text import fitted
    from gaugeblock.found import Found

    unit = unit or got.unit or None
    if isinstance(got.found, Table):
        return print_table(got.found, as_json, unit, got.read_as, why)
    if isinstance(got.found, Sheet):
        return print_sheet(got.found, as_json, unit, why, got.read_as)
    if as_json:
        import json

        print(json.dumps(got.as_dict(), ensure_ascii=False, indent=2))
    else:
        head = fitted(f"read as {got.read_as}", 0, 2)
        found = got.found
        text = found.text(whole=why, above=len(head), more="--why") if isinstance(found, Found) else found.text()
        print("\n".join([*head, text]))
    return 0
