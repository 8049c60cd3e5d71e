//! A moment as people write it. The cases were written from how dates are written, not from the reader.

#![allow(clippy::unwrap_used, reason = "a test may stop")]

use jiff::tz::TimeZone;
use slab_diary::{DateOrder, TypedWhenError, When};

/// Friday, October 23, 2026, 9 in the morning, in Denver.
fn noted() -> When {
    When::read("2026-10-23 09:00", &TimeZone::get("America/Denver").unwrap()).unwrap()
}

fn read(text: &str, order: DateOrder) -> Result<String, TypedWhenError> {
    When::read_typed(text, &noted(), order).map(|when| when.local().to_string()[..16].replace('T', " "))
}

#[test]
fn what_is_read() {
    for (text, wanted) in [
        ("10/20/2026", "2026-10-20 12:00"),
        ("10/20/2026 7:30", "2026-10-20 07:30"),
        ("10/20/2026 7:30 am", "2026-10-20 07:30"),
        ("10/20/2026 7:30PM", "2026-10-20 19:30"),
        ("10/20/26, 7 pm", "2026-10-20 19:00"),
        ("10-20-2026 15:05", "2026-10-20 15:05"),
        ("10/20", "2026-10-20 12:00"),
        ("12/24", "2025-12-24 12:00"),
        ("20/10/2026 7:30", "2026-10-20 07:30"),
        ("Oct 20", "2026-10-20 12:00"),
        ("October 20, 2026 at 7:30 a.m.", "2026-10-20 07:30"),
        ("20 Oct 2026", "2026-10-20 12:00"),
        ("oct 20th 2026 07:30", "2026-10-20 07:30"),
        ("20 de octubre de 2026 a las 7:30 a. m.", "2026-10-20 07:30"),
        ("3 ago 2026 16:00", "2026-08-03 16:00"),
        ("1 ene", "2026-01-01 12:00"),
        ("2026/10/20 7:30", "2026-10-20 07:30"),
        ("2026-10-20 07:30", "2026-10-20 07:30"),
        ("2026-10-20", "2026-10-20 12:00"),
        ("today 7:30 am", "2026-10-23 07:30"),
        ("7:30 am", "2026-10-23 07:30"),
        ("yesterday", "2026-10-22 12:00"),
        ("ayer 16:00", "2026-10-22 16:00"),
        ("hoy a las 6:00", "2026-10-23 06:00"),
        ("10/20/2026 12 am", "2026-10-20 00:00"),
        ("10/20/2026 12:15 pm", "2026-10-20 12:15"),
    ] {
        assert_eq!(read(text, DateOrder::MonthFirst).as_deref(), Ok(wanted), "\"{text}\"");
    }
}

#[test]
fn what_is_not() {
    for text in [
        "",
        " ",
        "soon",
        "7",
        "2026",
        "10",
        "10/20/2026 25:00",
        "10/20/2026 7:75",
        "13/32/2026",
        "2/30/2026",
        "Feb 30 2026",
        "Foo 20 2026",
        "10/20/2026 13 pm",
        "10/20/202",
        "20/20/2026",
        "10//2026",
        "tomorrow",
        "next week",
        "oct oct 2026",
        "10/20/2026 7:30 8:30",
        "-1/-2/2026",
        "0/0/2026",
        "October",
        "32 oct",
        "am",
        "10/20/2026 at noonish",
        "12:00 am today",
    ] {
        assert_eq!(read(text, DateOrder::MonthFirst), Err(TypedWhenError::Unread(text.to_owned())), "\"{text}\"");
    }
}

/// Where nobody knows which number is the month, it is asked.
#[test]
fn two_days_are_asked_about() {
    for text in ["10/11/2026", "3/4", "5-6-26 7:30"] {
        assert!(matches!(read(text, DateOrder::Unknown), Err(TypedWhenError::TwoDays { .. })), "\"{text}\"");
        assert!(read(text, DateOrder::MonthFirst).is_ok(), "\"{text}\"");
    }
    for (text, wanted) in [
        ("20/10/2026", "2026-10-20 12:00"),
        ("10/20/2026", "2026-10-20 12:00"),
        ("5/5/2026", "2026-05-05 12:00"),
        ("11 oct 2026", "2026-10-11 12:00"),
        ("2026-10-11", "2026-10-11 12:00"),
    ] {
        assert_eq!(read(text, DateOrder::Unknown).as_deref(), Ok(wanted), "\"{text}\"");
    }
}

/// The hour that the clocks jump over in spring, and the one that comes twice in autumn, are moments all the same.
#[test]
fn the_days_on_which_the_clocks_change() {
    assert_eq!(read("3/8/2026 2:30 am", DateOrder::MonthFirst).as_deref(), Ok("2026-03-08 03:30"));
    assert_eq!(read("11/2/2025 1:30 am", DateOrder::MonthFirst).as_deref(), Ok("2025-11-02 01:30"));
}
