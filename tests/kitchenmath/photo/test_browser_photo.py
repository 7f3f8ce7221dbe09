"""The panel of lesson 3 on a photo, in Chromium: a file is chosen, measured and shown."""

from dataclasses import replace

import pytest

pytest.importorskip("cv2", reason="OpenCV is not installed: the extra photo brings it")

from tests.helpers.browser import DESK, NEEDS_CHROMIUM, PHONE, open_lab
from tests.helpers.rendered import photo
from tests.helpers.trays import tray

pytestmark = NEEDS_CHROMIUM


def test_a_photo_that_is_chosen_is_measured_and_fits_a_phone(tmp_path):
    """Twelve rendered dice: outlines, sizes and verdict, at 1280 and at 390 dots."""
    scene = tray(70_020, "dice 3", "carrot")
    file = tmp_path / "tray.jpg"
    file.write_bytes(photo(replace(scene, pieces=scene.pieces[:12])))
    with (
        open_lab(tmp_path / "lab") as lab,
        lab.notebook("lessons/03-cut-to-size.ipynb") as lesson,
    ):
        assert lesson.run_all() == []
        cell = lesson.cell("photo-panel")
        cell.scroll_into_view_if_needed()
        with lab.page.expect_file_chooser() as asked:  # the button's own input is in no page
            cell.get_by_text("Choose a photo").click()
        asked.value.set_files(file)
        cell.get_by_text("Choose a photo (1)").wait_for()
        cell.get_by_role("button", name="Measure the photo").click()
        cell.get_by_text("12 single pieces").wait_for()
        for size, name in ((DESK, "photo-1280"), (PHONE, "photo-390")):
            lesson.at(size)
            lesson.picture(name, cell)
            for place in (0, 1):  # the tray, its sizes
                lesson.picture(f"{name}-{place}", cell.locator("img").nth(place))
            wide = cell.evaluate("node => [node.scrollWidth, node.clientWidth]")

            assert wide[0] <= wide[1] + 1
