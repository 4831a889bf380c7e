//! The clock.

use jiff::Timestamp;

/// The time now, as RFC 3339 in UTC with milliseconds, such as `2026-11-25T09:00:00.000Z`. The
/// number of digits is fixed, so that the order of the texts is the order of the times.
pub fn now() -> String {
    format!("{:.3}", Timestamp::now())
}

#[cfg(test)]
mod tests {
    #[test]
    fn verif_the_time_has_a_fixed_width_and_never_an_offset() {
        let now = super::now();
        assert_eq!(now.len(), "2026-11-25T09:00:00.000Z".len(), "{now}");
        assert!(now.ends_with('Z'), "{now}");
        assert!(now.parse::<jiff::Timestamp>().is_ok(), "{now}");
    }
}
