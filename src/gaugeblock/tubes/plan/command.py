"""``gaugeblock tube``: one stick at the bench, from a job file or from a quick form."""

from __future__ import annotations

from gaugeblock.answer.command import common_options, parser_of
from gaugeblock.errors import InputError

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Callable
    from typing import Any

    from gaugeblock.answer.options import Parser
    from gaugeblock.job.model import Job
    from gaugeblock.tubes.plan.planned import Plan

_EXAMPLE = (
    'gaugeblock tube build.toml "gearbox crossmember"\n  gaugeblock tube --offset "rise 6 in, angle 45 deg, before 8'
    ' in, after 8 in" --od "1-3/4 in" --wall ".120 in" \\\n    --material "1020 DOM" --method "rotary draw" --radius'
    ' "5-1/2 in" --start-mark "1-1/4 in" --grip "3 in" --test "47 deg set, 45 deg got"\n  gaugeblock tube --kick-up'
    ' "flat 6 in, rise 5 in, angle 45 deg, foot 8 in" --od "1-1/2 in" --radius "4-1/2 in" --from centre'
)
_FORMS = ("offset", "kick_up", "clear")
# option -> key of the tube, what it is
_TUBE = {
    "od": ("od", "outside diameter: 1-3/4 in"),
    "wall": ("wall", 'wall: .120 in, "11 BWG"'),
    "material": ("material", '"1020 DOM", "4130 normalized", 304'),
    "method": ("method", '"rotary draw", mandrel, press'),
    "radius": ("radius", "centre-line radius of the die: 5-1/2 in"),
    "maker-radius": ("maker_radius", "the least radius for this tube by the bender's maker"),
    "maker-source": ("maker_source", 'where he says so: "bender manual, p. 12"'),
    "from": ("marks_from", "what marks are measured from: start (as assumed), end, centre"),
    "reads": ("reads", '"1/32 in", "1/16 in", decimal, mm'),
    "yield-strength": ("yield_strength", "this tube's own, in place of the tables': 62 ksi"),
    "tensile-strength": ("tensile_strength", "the same"),
    "modulus": ("modulus", "its modulus of elasticity, the same: 29 Msi"),
    "shear-modulus": ("shear_modulus", "its modulus of rigidity: 11.5 Msi"),
    "section": ("section", 'of a straight piece that is twisted: "length 30 in, torque 200 lbf*ft"'),
    "wall-needed": ("wall_needed", "wall that must be left outside the bend"),
}
_DIE = {
    "start-mark": ("start_mark", "how far the die's mark stands before the start of the bend"),
    "grip": ("grip", "straight that the die grips"),
    "between": ("between", "straight needed between bends, where it is not the grip"),
}


def _add_forms(parser: Parser) -> None:
    """The quick forms of a shape."""
    parser.add_argument("--offset", metavar="FORM", help='"rise 6 in, angle 45 deg, before 8 in, after 8 in"')
    parser.add_argument(
        "--kick-up",
        metavar="FORM",
        help='"flat 6 in, rise 5 in, angle 45 deg, foot 8 in"; width for the flat; second rise, ...',
    )
    parser.add_argument(
        "--clear",
        metavar="FORM",
        help=(
            'over one pipe or two side by side: "od 2-1/2 in, spacing 3 in, height 2 in, at 18 in, span 40 in, gap '
            '3/4 in, angle 45 deg"'
        ),
    )


def tube(argv: list[str], read_job: Callable[[str], Job]) -> int:
    """Run ``gaugeblock tube``; the exit code."""
    parser = parser_of(
        "tube",
        "From what a tube must clear to marks on a straight stick: every tube of a job, or the one named.",
        _EXAMPLE,
    )
    parser.add_argument("job", nargs="?", metavar="JOB.toml", help="the job file; or a quick form without one")
    parser.add_argument("name", nargs="?", metavar="NAME", help="one tube of it (all when left out)")
    _add_forms(parser)
    for option, (name, about) in {**_TUBE, **_DIE}.items():
        more = [f"--{option.removesuffix('-strength')}"] if option.endswith("-strength") else []
        parser.add_argument(f"--{option}", *more, dest=name, metavar="X", help=about)
    parser.add_argument("--trim", metavar="T", help="spare length at each end, cut off after bending")
    parser.add_argument(
        "--test",
        action="append",
        metavar="BEND",
        help='a test bend on the die: "47 deg set, 45 deg got"; may be repeated',
    )
    parser.add_argument("--stock-length", metavar="L", help="tube as it is bought: 20 ft")
    parser.add_argument("--why", action="store_true", help="all checks and cautions behind the answer")
    common_options(parser, unit=False)
    a = parser.parse_args(argv)
    from gaugeblock.tables.load import refdata

    forms = {k: getattr(a, k) for k in _FORMS if getattr(a, k) is not None}
    given = {name: getattr(a, name) for name, _ in _TUBE.values() if getattr(a, name) is not None}
    data = refdata(a.data_release)
    if a.job is not None:
        asked = [f"--{k.replace('_', '-')}" for k in (*forms, *given)]
        if asked:
            raise InputError(
                asked[0], "tube", "the job file gives the tube", (), "leave the option out, or the job file"
            )
        plans = _of_job(read_job(a.job), a.job, a.name, data)
    elif len(forms) != 1:
        why = "no job file and no form" if not forms else "two forms are given"
        raise InputError("shape", "tube", why, ("JOB.toml", "--offset", "--kick-up", "--clear"), "give one of these")
    else:
        from gaugeblock.job import form
        from gaugeblock.tubes.plan.plan import work_out

        _read_words(given, data)
        ((shape, text),) = forms.items()
        option = f"--{shape.replace('_', '-')}"
        die = {name: getattr(a, name) for name, _ in _DIE.values() if getattr(a, name) is not None}
        die |= {"test_bends": [form.trial_bend(t, "--test") for t in a.test or ()]} if a.test else {}
        trim = {"trim": {"start": a.trim, "end": a.trim}} if a.trim else {}
        keys = {"name": shape.replace("_", "-"), **given, **trim, shape: form.shape(shape, text, option)}
        plans = [work_out(keys, die=die, stock_length=a.stock_length, data=data)]
    return _print(plans, a.json, a.why, named=a.name is not None or a.job is None)


def _read_words(given: dict[str, str], data: Any) -> None:
    """The words of the options, read whether or not the plan comes to use them."""
    from gaugeblock.answer.needs import together
    from gaugeblock.tables.load import canonical
    from gaugeblock.tubes import keys

    together(given, {"maker_source": ("maker_radius",)})
    if "material" in given:
        keys.stock(given["material"], data)
    if "method" in given:
        canonical(data, "tubes/bend_minimums", "method", given["method"])


def _of_job(job: Job, job_path: str, name: str | None, data: Any) -> list[Plan]:
    from gaugeblock.errors import LookupMiss
    from gaugeblock.tables.near import nearest
    from gaugeblock.tubes.page import planned

    names = [t.name for t in job.tubes]
    if not names:
        raise LookupMiss("tubes", job_path, "the job has no tube", (), "add one under [[tubes]]")
    if name is not None and name not in names:
        raise LookupMiss(name, job_path, "no tube of this name", nearest(name, names) or names, "use one of these")
    return [planned(t, job.shop, data) for t in job.tubes if name in (None, t.name)]


def _print(plans: list[Plan], as_json: bool, why: bool, *, named: bool) -> int:
    if as_json:
        import json

        sheets = [p.sheet.as_dict() for p in plans]
        out = sheets[0] if named else {"sheets": [{"name": p.name, **s} for p, s in zip(plans, sheets, strict=True)]}
        print(json.dumps(out, ensure_ascii=False, indent=2))
    else:
        from gaugeblock.tubes.plan.bench import render

        print("\n\n".join(render(p, why=why) for p in plans))
    return 1 if any(p.is_stopped for p in plans) else 0
