"""Put a changed line into functions that are loaded already: no module is imported anew."""

import functools
import gc
import inspect
from types import CodeType, FunctionType


def at_work(old, new):
    """Whether two texts of a module differ only where functions run, not where it is imported.

    Parameters
    ----------
    old, new : str

    Returns
    -------
    bool
    """
    pairs = _pairs(compile(old, "module", "exec"), compile(new, "module", "exec"))
    if pairs is None:
        return False
    changed = [before for before, after in pairs if _own(before) != _own(after)]
    return all(before.co_flags & inspect.CO_OPTIMIZED for before in changed)


class Functions:
    """The functions that are loaded now, by file, and every cache of theirs."""

    def __init__(self):
        self.by_file, self.caches = {}, []
        for each in gc.get_objects():
            if isinstance(each, functools._lru_cache_wrapper):
                self.caches.append(each)
            elif isinstance(each, FunctionType):
                self.by_file.setdefault(each.__code__.co_filename, []).append(each)

    def replace(self, file, old, new):
        """Let every function of a file run as its new text says; caches are emptied.

        Parameters
        ----------
        file : Path
            As the loaded module names it.
        old, new : str
            The file's text as it was loaded, and changed in one place.

        Returns
        -------
        bool
            Whether a function was changed.
        """
        pairs = _pairs(compile(old, str(file), "exec"), compile(new, str(file), "exec")) or []
        made = {before: after for before, after in pairs if before != after}
        changed = [one for one in self.by_file.get(str(file), ()) if one.__code__ in made]
        for cache in self.caches:
            cache.cache_clear()
        for one in changed:
            one.__code__ = made[one.__code__]
        return bool(changed)


def _pairs(old, new):
    """Code objects of one text beside those of another; None where their trees differ."""
    inside = [
        [each for each in code.co_consts if isinstance(each, CodeType)] for code in (old, new)
    ]
    if len(inside[0]) != len(inside[1]):
        return None
    pairs = [(old, new)]
    for before, after in zip(*inside, strict=True):
        below = _pairs(before, after)
        if below is None or before.co_freevars != after.co_freevars:
            return None
        pairs += below
    return pairs


def _own(code):
    """What one code object does, without those inside it."""
    values = [repr(each) for each in code.co_consts if not isinstance(each, CodeType)]
    return code.co_code, values, code.co_names, code.co_varnames
