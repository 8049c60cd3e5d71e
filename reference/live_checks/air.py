"""Air against psychrolib and CoolProp; evaporation against arithmetic with psychrolib's pressures."""

import sys

# Without numba psychrolib is plain Python: no compiling before the first answer.
sys.modules["numba"] = None
import CoolProp.CoolProp as coolprop  # noqa: E402
import psychrolib  # noqa: E402

from .case import Case, Quantity, line  # noqa: E402

psychrolib.SetUnitSystem(psychrolib.SI)

KELVIN = 273.15
# Within this of 0 °C wet bulbs are not compared. From -0.73 to 0 °C there are two answers, one over
# ice and one, up to 0.12 °C, over water; we take water, psychrolib ice, and CoolProp has its own rule.
FREEZING = 1.0

SATURATION = Quantity("saturation pressure, psychrolib", "of the value", 1e-6, relative=True)
SATURATION_IAPWS = Quantity("saturation pressure, CoolProp", "of the value", 5e-4, relative=True)
DEW_POINT = Quantity("dew point, psychrolib", "°C", 0.01)
DEW_POINT_COOLPROP = Quantity("dew point, CoolProp", "°C", 0.03)
WET_BULB = Quantity("wet bulb, psychrolib", "°C", 0.01)
WET_BULB_ICE = Quantity("wet bulb below freezing, psychrolib", "°C", 0.01)
WET_BULB_COOLPROP = Quantity("wet bulb, CoolProp", "°C", 0.05)
RATIO = Quantity("humidity ratio, psychrolib", "kg/kg", 1e-7)
# psychrolib takes vapor as an ideal gas, as we do; CoolProp does not and holds up to 0.7 % more.
RATIO_COOLPROP = Quantity("humidity ratio, CoolProp", "of the value", 0.01, relative=True)
PRESSURE = Quantity("air pressure at a height, psychrolib", "of the value", 1e-9, relative=True)
MENZEL = Quantity("evaporation, vapor pressure form", "kg/m²/h", 1e-6)
UNO = Quantity("evaporation, form without pressures", "kg/m²/h", 1e-9)
UNO_US = Quantity("the same in US units", "kg/m²/h", 1e-9)


def wide_air(rng):
    """°C, % RH, Pa."""
    return rng.uniform(-40.0, 80.0), rng.uniform(1.0, 100.0), rng.uniform(70_000.0, 108_000.0)


def site_air(rng):
    return rng.uniform(-20.0, 60.0), rng.uniform(5.0, 100.0), rng.uniform(75_000.0, 104_000.0)


def moist(what, t, rh, p):
    return coolprop.HAPropsSI(what, "T", t + KELVIN, "P", p, "R", rh / 100.0)


def saturation(rng, count):
    for _ in range(count):
        t = rng.uniform(-90.0, 190.0)
        yield Case(line("saturation", t_c=t), [(SATURATION, psychrolib.GetSatVapPres(t))])


def saturation_coolprop(rng, count):
    for _ in range(count):
        t = rng.uniform(0.1, 100.0)
        yield Case(line("saturation", t_c=t), [(SATURATION_IAPWS, coolprop.PropsSI("P", "T", t + KELVIN, "Q", 1, "Water"))])


def dew_point(rng, count):
    for _ in range(count):
        t, rh, _ = wide_air(rng)
        wanted = psychrolib.GetTDewPointFromRelHum(t, rh / 100.0)
        yield Case(line("dew_point", t_c=t, rh_pct=rh), [(DEW_POINT, wanted)])


def dew_point_coolprop(rng, count):
    for _ in range(count):
        t, rh, p = site_air(rng)
        yield Case(line("dew_point", t_c=t, rh_pct=rh), [(DEW_POINT_COOLPROP, moist("D", t, rh, p) - KELVIN)])


def wet_bulb(rng, count):
    made = 0
    while made < count:
        t, rh, p = wide_air(rng)
        wanted = psychrolib.GetTWetBulbFromRelHum(t, rh / 100.0, p)
        if abs(wanted) > FREEZING:
            made += 1
            quantity = WET_BULB if wanted > 0.0 else WET_BULB_ICE
            yield Case(line("wet_bulb", t_c=t, rh_pct=rh, p_pa=p), [(quantity, wanted)])


def wet_bulb_coolprop(rng, count):
    made = 0
    while made < count:
        t, rh, p = site_air(rng)
        wanted = moist("B", t, rh, p) - KELVIN
        if wanted > FREEZING:
            made += 1
            yield Case(line("wet_bulb", t_c=t, rh_pct=rh, p_pa=p), [(WET_BULB_COOLPROP, wanted)])


def humidity_ratio(rng, count):
    for _ in range(count):
        t, rh, p = wide_air(rng)
        wanted = psychrolib.GetHumRatioFromRelHum(t, rh / 100.0, p)
        yield Case(line("humidity_ratio", t_c=t, rh_pct=rh, p_pa=p), [(RATIO, wanted)])


def humidity_ratio_coolprop(rng, count):
    for _ in range(count):
        t, rh, p = site_air(rng)
        yield Case(line("humidity_ratio", t_c=t, rh_pct=rh, p_pa=p), [(RATIO_COOLPROP, moist("W", t, rh, p))])


def pressure(rng, count):
    for _ in range(count):
        z = rng.uniform(-400.0, 5000.0)
        yield Case(line("pressure", height_m=z), [(PRESSURE, psychrolib.GetStandardAtmPressure(z))])


POUND, FOOT, INCH, MILE_KM, STANDARD_GRAVITY = 0.45359237, 0.3048, 0.0254, 1.609344, 9.80665
PSI = POUND * STANDARD_GRAVITY / INCH**2
PER_SQUARE_FOOT = POUND / FOOT**2


def evaporation(rng, count):
    """The formulas as printed, grade M; no library has them. The pressures are psychrolib's."""
    for _ in range(count):
        surface, air = rng.uniform(2.0, 45.0), rng.uniform(2.0, 45.0)
        rh, wind = rng.uniform(0.0, 100.0), rng.uniform(0.0, 60.0)
        e0 = psychrolib.GetSatVapPres(surface) / PSI
        ea = psychrolib.GetSatVapPres(air) * rh / 100.0 / PSI
        menzel = 0.44 * (e0 - ea) * (0.253 + 0.096 * wind / MILE_KM) * PER_SQUARE_FOOT
        uno = 5.0 * ((surface + 18.0) ** 2.5 - rh / 100.0 * (air + 18.0) ** 2.5) * (wind + 4.0) * 1e-6
        f = lambda c: 1.8 * c + 32.0
        us = (f(surface) ** 2.5 - rh / 100.0 * f(air) ** 2.5) * (1.0 + 0.4 * wind / MILE_KM) * 1e-6 * PER_SQUARE_FOOT
        question = line("evaporation", surface_c=surface, air_c=air, rh_pct=rh, wind_kmh=wind)
        yield Case(question, [(MENZEL, menzel), (UNO, uno), (UNO_US, us)])


FAMILIES = {
    "saturation": saturation,
    "saturation-coolprop": saturation_coolprop,
    "dew-point": dew_point,
    "dew-point-coolprop": dew_point_coolprop,
    "wet-bulb": wet_bulb,
    "wet-bulb-coolprop": wet_bulb_coolprop,
    "humidity-ratio": humidity_ratio,
    "humidity-ratio-coolprop": humidity_ratio_coolprop,
    "pressure": pressure,
    "evaporation": evaporation,
}
