"""Money as a purse says it: 50p, 150 pence, 24.40 pounds, 21.13 per kg, in the class's currency.

A pound is money and a weight. Where money is asked for in a class that counts in pounds it can be
money only; everywhere else it is asked, never guessed.
"""

import re

from kitchenmath.errors import Unreadable
from kitchenmath.practice.kinds import MONEY_NAMES, example_of
from kitchenmath.units.currency import MONEY_KINDS
from kitchenmath.units.reading import read
from kitchenmath.units.registry import Q_
from kitchenmath.units.saying import MONEY

POUNDS = ("pound", "pounds")  # the words that are a weight too
LARGE = {
    **{sign: currency for currency, sign in MONEY.items()},
    **dict.fromkeys((*POUNDS, "quid", "gbp", "sterling"), "sterling"),
    **dict.fromkeys(("dollar", "dollars", "usd", "nzd"), "dollar"),
    **dict.fromkeys(("euro", "euros", "eur"), "euro"),
}
PENCE = ("p", "pence", "penny", "pennies")
CENTS = ("c", "¢", "ct", "cts", "cent", "cents")
PER = re.compile(
    r"(?P<money>.*[^\s/]) ?(?:/| per | a | an ) ?(?P<measure>(?:\d+ ?)?[a-z][a-z. ]*)",
    re.IGNORECASE,
)
PURSE = re.compile(
    r"(?P<minus>-?)(?P<sign>[$£€])? ?(?P<number>\d[\d.,']*) ?(?P<word>[^\W\d_]+|[$£€¢])?"
    r"(?:,? ?(?:and )?(?P<change>\d{1,2}) ?(?P<coin>[^\W\d_]+|¢)?)?"
)


def read_money(line, kind, currency, system):
    """An amount of money or a price, or None where the line says it in another way.

    Parameters
    ----------
    line : str
        In plain characters.
    kind : str
        Of the question: only "money" and "money per weight" are read here.
    currency : str
        The class's.
    system : str
        Whose pounds and ounces a price is for.

    Returns
    -------
    Quantity or None

    Raises
    ------
    Unreadable
        For what may be money or a weight, and for two units on one number.

    Examples
    --------
    150 pence are £1.50, and a bare number per kilo is in the class's own money.

    >>> print(say(read_money("150 pence", "money", "sterling", "uk")))
    £1.50
    >>> print(say(read_money("21.13 per kg", "money per weight", "euro", "metric")))
    €21.13 per kg
    """
    if kind not in MONEY_KINDS:
        return None
    price = PER.fullmatch(line)
    purse = PURSE.fullmatch(price["money"] if price else line)
    if purse is None:
        return None
    words = [(purse[part] or "").casefold() for part in ("sign", "word", "coin")]
    known = (*LARGE, *PENCE, *CENTS, "")
    if any(word not in known for word in words) or not (price or any(words)):
        return None
    _refuse_two_meanings(line, words, price, kind, currency)
    value = _value(line, purse, words, currency)
    if price is None:
        return value
    measure = price["measure"]
    if measure[0].isdigit():  # "per 100 g" is said back by the kilo
        return (value / read(measure, system)).to(f"{value.units}/kg")
    return value / read(f"1 {measure}", system)


def _refuse_two_meanings(line, words, price, kind, currency):
    """Pounds that may be a weight are asked about."""
    if not set(words) & set(POUNDS) or (currency == "sterling" and (kind == "money" or price)):
        return
    raise Unreadable(
        f"“{line[:40]}” may be pounds of money or pounds of weight. This set counts in "
        f'{MONEY_NAMES[currency]}: type it as "{example_of(kind, currency)}".'
    )


def _value(line, purse, words, currency):
    """The amount in the currency that its words say, else in the class's."""
    sign, word, coin = words
    of_coins = {"": currency, **dict.fromkeys(PENCE, "sterling"), **dict.fromkeys(CENTS, currency)}
    if currency == "sterling":
        of_coins |= dict.fromkeys(CENTS, "dollar")
    small = word in of_coins and word != ""
    said = {LARGE[each] for each in (sign, word) if each in LARGE}
    said |= {of_coins[each] for each in (word, coin) if each in of_coins and each}
    number = read(purse["number"]).magnitude
    # "£1.50p" is one pound fifty; "£50p" may be either.
    doubled = sign and small and not re.search(r"[.,]\d\d$", purse["number"])
    if len(said) > 1 or doubled or (small and purse["change"]) or (coin and coin in LARGE):
        raise Unreadable(f"“{line[:40]}” has two units on one number: type it once, such as 3.48.")
    value = number / 100 if small and not sign else number
    value += int(purse["change"] or 0) / 100
    return Q_(-value if purse["minus"] else value, said.pop() if said else currency)
