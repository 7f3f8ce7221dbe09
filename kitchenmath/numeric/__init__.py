"""Plain mathematics without units: roots, distributions, Bessel functions, with numpy alone."""
