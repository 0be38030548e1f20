"""The answers on a bolt and on a part as a line asks them: what was said of the maker's torque is one option."""

from __future__ import annotations

from functools import wraps

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Callable

    from gaugeblock.answer.sheet import Sheet


def of_maker(answer: Callable[..., Sheet]) -> Callable[..., Sheet]:
    """The answer, which takes what was said of the maker's torque as one option."""

    @wraps(answer)
    def asked(*args: object, maker: str | None = None, maker_condition: str | None = None, **options: object) -> Sheet:
        if options.pop("strips", None) is not None:
            from gaugeblock.fasteners.stripping import told

            return told(asked(*args, maker=maker, maker_condition=maker_condition, **options))
        if (in_mind := options.pop("told", None)) is not None:
            from gaugeblock.fasteners.wished import beside

            return beside(str(in_mind), asked(*args, maker=maker, maker_condition=maker_condition, **options))
        if maker is None:
            return answer(*args, **options)
        own = {"torque": maker, "condition": maker_condition} if maker_condition else maker
        return answer(*args, maker=own, **options)

    return asked
