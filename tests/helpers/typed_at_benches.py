"""What students type at each bench; all invented."""

LOG = "time_min,temperature_C\n0,8.0\n5,8.5\n10,9.4\n15,14.9\n20,22.1\n25,29.4\n30,36\n35,42.1\n"
TYPED = {
    "cups": {"weights": "136, 149, 141 g"},
    "friction": {"dough": "26 °C", "water": "24", "flour": "22", "room": "73.4 °F"},
    "cuts": {"edges": "3,5; 3,0; 2,5; 3,0", "cut": "brunoise", "ruler": "0.5"},
    "yield": {"bought": "0,91 kg", "cut": "640"},
    "brine": {"salt": "50 g", "water": "950 g"},
    "foam": {"base": "270 g", "foam": "90 g", "drained": "10, 20, 29, 33 mL", "liquid": "60 mL"},
    "sauce": {"before": "1.5 kg", "left": "1050 g", "ran_before": "8 s", "ran_after": "20"},
    "oven": {"across": "7 cm", "oven": "120", "log": LOG},
    "probe": {"ice": "0.5 °C", "boiling": "98", "altitude": "900 m"},
    "task": {"guess": "10", "times": "14, 17, 15 min"},
}
