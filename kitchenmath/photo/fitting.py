"""Least squares with numpy: the one solver behind the camera's pose and the boxes."""

import numpy as np


def fitted(residuals, start, steps, outlying, rounds=40):
    """Parameters that make residuals small, where a few of them may be far off.

    Parameters
    ----------
    residuals : callable
        Takes parameters, shape (many, parameters); gives residuals, shape (many, residuals).
    start : array
    steps : array
        How far to move each parameter to see its slope.
    outlying : float or array
        A residual far above this counts by its size, and no more by its square.
    rounds : int

    Returns
    -------
    parameters : array
    cost : float
        Half the sum of squares for small residuals, less for outlying ones.
    covariance : array
        Of the parameters, for residuals of unit spread.

    Notes
    -----
    Levenberg and Marquardt's method with the soft loss c²(√(1 + (r/c)²) - 1).

    Examples
    --------
    A straight line through (0, 1), (1, 3), (2, 5): 1 + 2x.

    >>> def off(lines):
    ...     return lines[:, :1] + lines[:, 1:] * [0, 1, 2] - [1, 3, 5]
    >>> line, _, _ = fitted(off, np.zeros(2), np.full(2, 1e-4), outlying=10.0)
    >>> [round(float(each), 4) for each in line]
    [1.0, 2.0]
    """
    at, damping = np.array(start, float), 1e-3
    steps = np.asarray(steps, float)
    cost = None
    for _ in range(rounds):
        tried = residuals(np.vstack([at, at + np.diag(steps)]))
        now = tried[0]
        slopes = (tried[1:] - now) / steps[:, None]
        cost = _cost(now, outlying)
        weighed = slopes / np.sqrt(1 + (now / outlying) ** 2)
        normal, downhill = weighed @ slopes.T, -(weighed @ now)
        better = None
        while damping < 1e8 and better is None:
            move = np.linalg.solve(normal + damping * np.diag(np.diag(normal) + 1e-12), downhill)
            new_cost = _cost(residuals((at + move)[None])[0], outlying)
            if new_cost <= cost:
                better = new_cost
                damping = max(damping / 5, 1e-9)
            else:
                damping *= 4
        if better is None:
            break
        at = at + move
        if cost - better < 1e-5 * cost + 1e-12:
            cost = better
            break
    return at, cost, np.linalg.pinv(normal)


def _cost(residuals, outlying):
    # The same as c²(√(1 + (r/c)²) - 1), and still right where c is a million times r.
    return float(np.sum(residuals**2 / (1 + np.sqrt(1 + (residuals / outlying) ** 2))))
