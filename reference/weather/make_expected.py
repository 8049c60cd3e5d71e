"""Reads the two weather files with pvlib and writes expected.csv beside this script.

Independent of our importer: pvlib.iotools parses, pandas counts and averages. Two habits of pvlib
are put right here, since it stamps EPW rows at the start of their hour and keeps the years of a
typical year: every row is stamped at the end of its hour, in the nominal year 2001.
"""

from pathlib import Path

import numpy as np
import pandas as pd
import pvlib

HERE = Path(__file__).resolve().parent
TMY3 = HERE / "../../demo/weather/greensboro-nc-tmy3-feb-may.csv"
EPW = HERE / "pvgis-45N-8E-jan-feb.epw"
FIELDS = ["air_c", "rh_pct", "dew_point_c", "wind_m_s", "pressure_hpa", "rain_mm"]
SPOTS = 50


def table(data, columns, ends):
    """The fields in our units, indexed by the end of the hour in UTC, with the month of the row."""
    out = pd.DataFrame({ours: data[theirs].to_numpy(float) for ours, theirs in columns.items()})
    ends = pd.DatetimeIndex([end.replace(year=2001) for end in ends])
    # The last hour of a whole year ends in the year after.
    ends = pd.DatetimeIndex([ends[i] + pd.DateOffset(years=int(i > 0 and ends[i] < ends[0])) for i in range(len(ends))])
    out["month"] = (ends - pd.Timedelta(hours=1)).month
    out.index = ends.tz_convert("UTC")
    return out


def tmy3():
    data, _ = pvlib.iotools.read_tmy3(TMY3, map_variables=True)
    columns = {
        "air_c": "temp_air",
        "rh_pct": "relative_humidity",
        "dew_point_c": "temp_dew",
        "wind_m_s": "wind_speed",
        "pressure_hpa": "pressure",
        "rain_mm": "Lprecip depth (mm)",
    }
    out = table(data, columns, data.index)
    return out.mask(out <= -9900)


def epw():
    data, _ = pvlib.iotools.read_epw(EPW)
    columns = {
        "air_c": "temp_air",
        "rh_pct": "relative_humidity",
        "dew_point_c": "temp_dew",
        "wind_m_s": "wind_speed",
        "pressure_hpa": "atmospheric_pressure",
        "rain_mm": "liquid_precipitation_depth",
    }
    out = table(data, columns, [start.replace(year=2001) + pd.Timedelta(hours=1) for start in data.index])
    missing = {"air_c": 99.9, "rh_pct": 999, "dew_point_c": 99.9, "wind_m_s": 999, "pressure_hpa": 999999, "rain_mm": 999}
    for field, code in missing.items():
        out[field] = out[field].mask(out[field] >= code)
    out["pressure_hpa"] /= 100.0
    return out


def lines(name, data):
    for month, rows in data.groupby("month"):
        counts = [str(rows[field].count()) for field in FIELDS]
        means = ["" if rows[field].count() == 0 else repr(float(rows[field].mean())) for field in FIELDS]
        yield [name, "count", str(month), *counts]
        yield [name, "mean", str(month), *means]
    chosen = np.sort(np.random.default_rng(9).choice(len(data), SPOTS, replace=False))
    for at, row in data.iloc[chosen].iterrows():
        cells = ["" if np.isnan(row[field]) else repr(round(float(row[field]), 9)) for field in FIELDS]
        yield [name, "spot", at.strftime("%Y-%m-%dT%H:%M:%SZ"), *cells]


def main():
    head = [
        f"# Made by make_expected.py with pvlib {pvlib.__version__}, pandas {pd.__version__}: do not edit.",
        "# count and mean: by month of the row; spot: one row, stamped at the end of its hour in 2001, UTC.",
        ",".join(["file", "kind", "key", *FIELDS]),
    ]
    body = [",".join(line) for name, data in (("tmy3", tmy3()), ("epw", epw())) for line in lines(name, data)]
    (HERE / "expected.csv").write_text("\n".join(head + body) + "\n")


if __name__ == "__main__":
    main()
