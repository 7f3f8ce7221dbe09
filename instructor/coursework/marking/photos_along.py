"""Photos that came with a hand-in: read as data, made inert, and put into our marked copy."""

import base64

from coursework.arriving.photos import photo_in
from coursework.marking.words import PHOTO_UNSEEN, THE_PHOTO
from coursework.sets.keys import grade_id
from kitchenmath.practice.typed_cells import PHOTO


def photos_along(outputs, ours):
    """The pictures below the photo cells of a hand-in.

    Parameters
    ----------
    outputs : dict of str to str
        As from `read_notebook`.
    ours : dict
        Our copy: only a photo cell that we handed out brings a photo.

    Returns
    -------
    dict of str to bytes
        By question, each a JPEG that holds nothing but its dots.
    list of str
        A sentence for the instructor for each that cannot be shown.
    """
    photos, unseen = {}, []
    for cell in ours["cells"]:
        question = grade_id(cell).removesuffix(PHOTO)
        if question == grade_id(cell):
            continue
        try:
            photo = photo_in(outputs.get(question, "[]"))
        except ValueError as why:
            unseen.append(PHOTO_UNSEEN.format(question=question, why=why))
            continue
        if photo:
            photos[question] = photo
    return photos, unseen


def with_photos(notebook, photos):
    """Put photos below the photo cells of our copy, where a person who marks sees them.

    Parameters
    ----------
    notebook : dict
        Changed in place.
    photos : dict of str to bytes
    """
    for cell in notebook["cells"]:
        photo = photos.get(grade_id(cell).removesuffix(PHOTO))
        if photo and grade_id(cell).endswith(PHOTO):
            shown = {"image/jpeg": base64.b64encode(photo).decode(), "text/plain": THE_PHOTO}
            cell["outputs"] = [{"output_type": "display_data", "metadata": {}, "data": shown}]
