"""A lesson's cells run for a page: what each of them shows, and its panels kept alive.

A panel and the page talk in the widgets' own messages. Here they go through one function, so the
page may be fed by a worker in the browser or by this machine's Python.
"""

import ast
import base64
import contextlib
import io
import sys
import types

__all__ = ["Lesson"]

PICTURES = {"_repr_svg_": "image/svg+xml", "_repr_png_": "image/png"}


class Lesson:
    """A lesson whose cells run one by one.

    Parameters
    ----------
    send : callable
        Takes a message to the page's panels, a dict, and its buffers, a list of bytes.

    Attributes
    ----------
    value : object
        What the last cell was worth.
    """

    def __init__(self, send):
        self.value = None
        self._names, self._drills = {"__name__": "__main__"}, {}
        _without_a_shell()
        import comm

        comm.create_comm = _speaking_through(send)
        self._comms = comm.get_comm_manager().comms

    def run(self, source):
        """Run one cell.

        Parameters
        ----------
        source : str

        Returns
        -------
        list of dict
            What it shows, in order: "text", "html", "picture" (a data address) or "panel" (the
            model that the page is to show).
        """
        printed = io.StringIO()
        with contextlib.redirect_stdout(printed):
            value = self.value = self._value_of(source)
        shown = [{"text": printed.getvalue()}] if printed.getvalue().strip() else []
        if hasattr(value, "round"):
            self._drills[value.model_id] = value.round
        return shown if value is None else [*shown, _shown(value)]

    def again(self):
        """The drills that were begun and whose last first try was not right.

        Returns
        -------
        list of str
            Their models.
        """
        return [model for model, turn in self._drills.items() if turn.is_to_repeat]

    def receive(self, comm_id, data, buffers=()):
        """Take a message from a panel in the page.

        Parameters
        ----------
        comm_id : str
        data : dict
        buffers : sequence of bytes
        """
        if comm_id in self._comms:  # a panel may speak once more while it closes
            message = {"content": {"comm_id": comm_id, "data": data}, "buffers": list(buffers)}
            self._comms[comm_id].handle_msg(message)

    def _value_of(self, source):
        """Run the lines of a cell, and return what its last one is worth."""
        body = ast.parse(source).body
        last = body.pop() if body and isinstance(body[-1], ast.Expr) else None
        exec(compile(ast.Module(body, []), "<cell>", "exec"), self._names)
        if last is None or source.rstrip().endswith(";"):
            return None
        return eval(compile(ast.Expression(last.value), "<cell>", "eval"), self._names)


def _shown(value):
    """One thing that a page can show."""
    if hasattr(value, "_model_id") or hasattr(value, "model_id"):
        return {"panel": value.model_id}
    if hasattr(value, "_repr_html_") and value._repr_html_():
        return {"html": value._repr_html_()}
    for method, kind in PICTURES.items():
        raw = getattr(value, method, lambda: None)()
        if raw:
            raw = raw.encode() if isinstance(raw, str) else raw
            return {"picture": f"data:{kind};base64,{base64.b64encode(raw).decode()}"}
    return {"text": repr(value)}


def _speaking_through(send):
    """A class of comms that send through a function."""
    from comm.base_comm import BaseComm

    class PageComm(BaseComm):
        def publish_msg(self, msg_type, data=None, metadata=None, buffers=None, **keys):
            message = {
                "type": msg_type,
                "comm_id": self.comm_id,
                "target_name": self.target_name,
                "data": data or {},
                "metadata": metadata or {},
            }
            send(message, [bytes(each) for each in buffers or ()])

    return PageComm


def _without_a_shell():
    """Stand in for IPython where it is not installed: widgets only ask it whether it is there.

    It would be a third of what a phone has to load, and nothing else of it is used.
    """
    try:
        import IPython  # noqa: F401
    except ImportError:
        shell = types.ModuleType("IPython.core.interactiveshell")
        shell.InteractiveShell = type("InteractiveShell", (), {})
        display = types.ModuleType("IPython.display")
        display.display = display.clear_output = lambda *_, **__: None
        python = types.ModuleType("IPython")
        python.get_ipython, python.version_info = (lambda: None), (9,)  # matplotlib asks which
        python.display = display.display
        core = types.ModuleType("IPython.core")
        for module in (python, core, shell, display):
            sys.modules[module.__name__] = module
