"""What a shell needs to complete commands and their options with the tab key."""

from __future__ import annotations

import contextlib
import io
import re

from gaugeblock.errors import InputError

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Callable, Iterable

SHELLS = ("bash", "zsh", "fish")
_BASH = """\
# Put this into a file that your shell reads: gaugeblock completion bash >> ~/.bashrc
_gaugeblock() {
  local word="${COMP_WORDS[COMP_CWORD]}" options=""
  case "${COMP_WORDS[1]}" in
%s
  esac
  if [ "$COMP_CWORD" -eq 1 ]; then options="%s"; fi
  COMPREPLY=($(compgen -W "$options" -- "$word"))
  if [ ${#COMPREPLY[@]} -eq 0 ]; then COMPREPLY=($(compgen -f -- "$word")); fi
}
complete -F _gaugeblock gaugeblock
"""
_ZSH = """\
#compdef gaugeblock
# Put this into a file _gaugeblock in a folder of your fpath: gaugeblock completion zsh > ~/.zfunc/_gaugeblock
local -a options
if (( CURRENT == 2 )); then
  options=(%s)
else
  case "${words[2]}" in
%s
  esac
fi
compadd -- $options
_files
"""


def script(shell: str, commands: Iterable[str], run: Callable[[list[str]], int]) -> str:
    """The script for one shell; InputError for a shell that is none of them. ``run`` runs a command line."""
    if shell not in SHELLS:
        raise InputError(shell, "completion", "no script for this shell", SHELLS, "name one of these")
    options = {name: _options(name, run) for name in commands}
    names = " ".join(options)
    if shell == "fish":
        lines = ["# gaugeblock completion fish > ~/.config/fish/completions/gaugeblock.fish"]
        lines += [f"complete -c gaugeblock -n __fish_use_subcommand -a {name}" for name in options]
        lines += [
            f"complete -c gaugeblock -n '__fish_seen_subcommand_from {name}' -l {option[2:]}"
            for name, found in options.items()
            for option in found
        ]
        return "\n".join(lines) + "\n"
    if shell == "bash":
        return _BASH % ("\n".join(f'    {n}) options="{" ".join(o)}" ;;' for n, o in options.items()), names)
    return _ZSH % (names, "\n".join(f"    {n}) options=({' '.join(o)}) ;;" for n, o in options.items()))


def _options(name: str, run: Callable[[list[str]], int]) -> list[str]:
    """The long options of a command, as its help has them."""
    out = io.StringIO()
    with contextlib.redirect_stdout(out), contextlib.suppress(SystemExit):
        run([name, "--help"])
    return sorted(set(re.findall(r"(?<![\w-])--[a-z][a-z-]*", out.getvalue())))
