"""What a page asks of Python, and the answer: one message in, one message out.

The page knows nothing else of Python. A worker in the browser and this machine's own server both
hand their messages to `Talk`.
"""

import json
import traceback

from kitchenmath.pages.form import Form

__all__ = ["Talk"]


class Talk:
    """One page's talk with Python.

    Parameters
    ----------
    send : callable
        Takes what a lesson's panels say: a dict, and its buffers, a list of bytes.
    home : Home, optional
        Where answers and notes are kept on a computer that has the kit; a browser keeps its own.
    """

    def __init__(self, send=None, home=None):
        self._send, self._home, self._lesson, self._form = send, home, None, None
        self._seen = b""  # the set's notebook as this page knows it

    def hear(self, asked, buffers=()):
        """The answer to what a page asks.

        Parameters
        ----------
        asked : str
            JSON with "do": "open" (a set's notebook), "show", "save" or "keep" (what was typed),
            "photo" (one goes along, in the buffers, or none any more), "run" (a lesson's cell),
            "tell" (a panel's message) or "note" (what was read or is to be repeated), and what
            that needs.
        buffers : sequence of bytes

        Returns
        -------
        str
            JSON; with "trouble", a sentence, where it could not be done.
        """
        try:
            return json.dumps(self._answer(**json.loads(asked), buffers=buffers))
        except Exception as error:  # whatever fails, a page shows a sentence and goes on
            return json.dumps({"trouble": str(error), "python": traceback.format_exc()})

    def _answer(self, do, buffers=(), **asked):
        if do == "open":
            form = Form(asked["notebook"].encode())
            if asked.get("set_id") not in (None, form.set_id):
                return {"trouble": f"This file is of another set: {form.set_id}."}
            self._form, self._seen = form, self._seen or asked["notebook"].encode()
            return {"typed": form.typed(), "fields": form.fields, "photos": form.photos}
        if do == "photo":
            said = self._form.take_photo(asked["question"], buffers, asked["lines"])
            return {"said": said, "photos": self._form.photos}
        if do == "show":
            return self._form.shown(asked["typed"])
        if do == "save":
            return {"notebook": self._form.filled(asked["typed"]).decode()}
        if do == "keep":
            return {"said": self._keep(self._form.filled(asked["typed"]))}
        if do == "note":
            self._home.note(asked["name"], asked["value"])
            return {}
        if do == "run":
            return {"shown": self._live().run(asked["source"])}
        if do == "tell":
            self._live().receive(asked["comm_id"], asked["data"], buffers)
            return {"again": self._live().again()}
        raise ValueError(f"do: {do!r} came, and it is none of what a page asks.")

    def _keep(self, raw):
        said = self._home.keep(self._form.set_id, raw, self._seen)
        self._seen = raw
        return said

    def _live(self):
        if self._lesson is None:
            from kitchenmath.pages.live import Lesson

            self._lesson = Lesson(self._send)
        return self._lesson
