"""Pages: the templates of `pages`, filled in. Whatever a person wrote is escaped there."""

from functools import lru_cache
from pathlib import Path

from jinja2 import Environment, FileSystemLoader, StrictUndefined

from coursework.words import number

__all__ = ["page"]


def page(template, **what):
    """A template of `pages` filled in; every text is escaped unless it is Markup.

    Parameters
    ----------
    template : str
    **what
        What the template names.

    Returns
    -------
    str
    """
    return _templates().get_template(template).render(**what)


@lru_cache(maxsize=1)
def _templates():
    templates = Environment(
        loader=FileSystemLoader(Path(__file__).with_name("pages")),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        keep_trailing_newline=True,
    )
    templates.filters["number"] = number
    return templates
