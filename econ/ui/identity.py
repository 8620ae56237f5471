"""Whose cases this browser tab shows.

Served to the person at the machine alone, all cases are theirs. Served to more than one, each browser keeps a token of
128 random bits in a cookie that no other site sees; the store keeps its digest, and no link carries it.
"""

from typing import Final

import streamlit as st

from econ.store.owner import NOBODY_ELSE, hashed, is_token, new_token

COOKIE: Final = "econ_owner"
_TOKEN: Final = "owner_token"
_HERE_ALONE: Final = ("localhost", "127.0.0.1", "::1")
_KEPT_FOR_S: Final = 400 * 24 * 3600
"""As long as browsers keep a cookie at most; assumption."""

_SCRIPT: Final = f"""
export default function ({{ data }}) {{
  if (document.cookie.split("; ").some((part) => part.startsWith("{COOKIE}="))) {{
    if (!document.cookie.includes(data)) location.reload();
    return;
  }}
  const secure = location.protocol === "https:" ? "; Secure" : "";
  document.cookie = `{COOKIE}=${{data}}; Path=/; Max-Age={_KEPT_FOR_S}; SameSite=Strict${{secure}}`;
}}
"""


def is_served() -> bool:
    """Return whether the program answers to more than this machine."""
    return st.get_option("server.address") not in _HERE_ALONE


def owner() -> str:
    """Return the owner of what this tab saves and lists."""
    return hashed(_token()) if is_served() else NOBODY_ELSE


def remember() -> None:
    """Have the browser keep its token, where it has none yet."""
    if not is_served() or is_token(st.context.cookies.get(COOKIE, "")):
        return
    keep = st.components.v2.component("owner_cookie", js=_SCRIPT)
    keep(data=_token(), key="owner_cookie", height=1)


def _token() -> str:
    """Return what the cookie says; a token of this tab's own until the browser has kept one."""
    kept = st.context.cookies.get(COOKIE, "")
    if is_token(kept):
        return kept
    token: str = st.session_state.setdefault(_TOKEN, new_token())
    return token
