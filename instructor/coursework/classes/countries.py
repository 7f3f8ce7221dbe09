"""The class's country: which sign parts the columns of its tables, and which its decimals."""

from dataclasses import dataclass

__all__ = ["TableStyle", "is_country", "style_of"]

# ISO 3166 two-letter codes. Decimal signs as the Unicode CLDR has them for the country's main
# language, from memory; where a comma parts decimals, spreadsheets part columns by a semicolon.
COMMA = """
AD AL AM AO AR AT AZ BA BE BG BO BR BY CL CO CR CU CV CY CZ DE DK DZ EC EE ES FI FO FR GE GL GR HR
HU ID IS IT KG KZ LT LU LV MA MD ME MK MN MZ NL NO PL PT PY RO RS RU SE SI SK SN TN TR UA UY UZ VE
VN ZA
"""
POINT = """
AE AU BD BN BW CA CH CN DO EG GB GH GT HK HN IE IL IN JM JO JP KE KR LB LI LK MM MT MX MY NG NI NP
NZ PA PE PH PK PR SA SG SV TH TT TW TZ UG US ZM ZW
"""


@dataclass(frozen=True)
class TableStyle:
    """How a table is written: what parts columns, and what parts decimals."""

    separator: str = ","
    decimal: str = "."


def is_country(code):
    """Whether the kit knows how tables are written in a country."""
    return code in COMMA.split() or code in POINT.split()


def style_of(country):
    """How tables are written in a country; "" is the comma and the point.

    Parameters
    ----------
    country : str

    Returns
    -------
    TableStyle

    Examples
    --------
    >>> style_of("DE"), style_of("GB")
    (TableStyle(separator=';', decimal=','), TableStyle(separator=',', decimal='.'))
    """
    return TableStyle(";", ",") if country in COMMA.split() else TableStyle()
