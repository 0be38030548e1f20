"""What a command says of what it was not given."""

from __future__ import annotations

import pytest

from gaugeblock.answer.command import parser_of
from gaugeblock.errors import InputError


def test_what_was_not_said_is_named_with_what_it_is() -> None:
    parser = parser_of("trial", "A trial.", "gaugeblock trial 3")
    parser.add_argument("part")
    parser.add_argument("size", metavar="SIZE", help="outside diameter, 5 %% less where it is worn")
    parser.add_argument("--wall", metavar="W", required=True, help="wall")
    with pytest.raises(InputError) as refused:
        parser.parse_args([])
    assert refused.value.why == "not said: part; SIZE, outside diameter, 5 % less where it is worn; --wall, wall"
    assert refused.value.do == "say it, or see gaugeblock trial --help"
