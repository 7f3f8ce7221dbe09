"""Every panel that is made without being told anything, by its module and name."""

import importlib
import inspect
import pkgutil

import kitchenmath.panels


def modules(package):
    """The modules of a package, in order."""
    names = [module.name for module in pkgutil.iter_modules(package.__path__)]
    return [importlib.import_module(f"{package.__name__}.{name}") for name in sorted(names)]


# A photo and a form have no slider; their own modules test them.
WITHOUT_SLIDERS = ("tray_photo_panel", "recipe_card_panel")
# Every other function of a panel module that makes a panel without being told anything.
PANELS = {
    f"{module.__name__.rpartition('.')[2]}: {name}": make
    for module in modules(kitchenmath.panels)
    for name, make in vars(module).items()
    if name.endswith("_panel")
    and make.__module__ == module.__name__
    and not inspect.signature(make).parameters
    and name not in WITHOUT_SLIDERS
}
