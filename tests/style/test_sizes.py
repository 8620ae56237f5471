"""Small enough to read: files, functions, parameters, nesting."""

import ast

from tests.style import source

FILE_LINES = 400
BODY_LINES = 40
PARAMETERS = 6
NESTING = 3
NESTS = (ast.If, ast.For, ast.While, ast.With, ast.Try)


def body_lines(function):
    statements = function.body
    if isinstance(statements[0], ast.Expr) and isinstance(getattr(statements[0], "value", None), ast.Constant):
        statements = statements[1:]
    return 0 if not statements else statements[-1].end_lineno - statements[0].lineno + 1


def depth(node):
    below = [depth(child) for child in ast.iter_child_nodes(node)]
    is_elif = isinstance(node, ast.If) and len(node.orelse) == 1 and isinstance(node.orelse[0], ast.If)
    here = isinstance(node, NESTS) and not is_elif
    return int(here) + max(below, default=0)


def test_no_file_is_longer_than_the_limit():
    files = [*source.trees(), *(source.ROOT / "tests").rglob("*.py")]
    long = {str(f): n for f in files if (n := len(f.read_text(encoding="utf-8").splitlines())) > FILE_LINES}
    assert not long


def test_no_function_body_is_longer_than_the_limit():
    long = {f"{f}:{x.name}": body_lines(x) for f, x in source.functions() if body_lines(x) > BODY_LINES}
    assert not long


def test_no_function_takes_more_parameters_than_the_limit():
    def count(function):
        a = function.args
        names = [x.arg for x in (*a.posonlyargs, *a.args, *a.kwonlyargs)]
        return len([name for name in names if name not in {"self", "cls"}])

    wide = {f"{f}:{x.name}": count(x) for f, x in source.functions() if count(x) > PARAMETERS and x.name != "__init__"}
    assert not wide


def test_no_function_nests_deeper_than_the_limit():
    deep = {f"{f}:{x.name}": depth(x) for f, x in source.functions() if depth(x) > NESTING}
    assert not deep


def test_no_bare_boolean_argument():
    bare = []
    for file, function in source.functions():
        for argument in (*function.args.posonlyargs, *function.args.args):
            note = argument.annotation
            if isinstance(note, ast.Name) and note.id == "bool":
                bare.append(f"{file}:{function.name}:{argument.arg}")
    assert not bare


def test_package_inits_import_nothing():
    full = [
        str(file)
        for file, tree in source.trees().items()
        if file.name == "__init__.py" and any(isinstance(n, ast.Import | ast.ImportFrom) for n in tree.body)
    ]
    assert not full
