"""Pages are scripts that the dashboard runs: the search for examples in docstrings must not import them."""

collect_ignore_glob = ["*.py"]
