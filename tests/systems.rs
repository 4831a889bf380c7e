//! General problems as files: read, written, described by a schema, solved.

mod beams;
mod cases;
mod drawn;
mod faults;
mod fields;
mod form;
mod guided;
mod knots;
mod lamina;
mod laminae;
mod page;
mod reach;
mod terms;

use leverwright::lesson::{Fault, parse_system, write_system};
use proptest::prelude::*;

fn told(faults: &[Fault]) -> Vec<String> {
    faults.iter().map(Fault::to_string).collect()
}

proptest! {
    #![proptest_config(ProptestConfig {
        cases: 400,
        rng_seed: proptest::test_runner::RngSeed::Fixed(5),
        ..ProptestConfig::default()
    })]

    #[test]
    fn verif_written_systems_read_back_equal(seed in any::<u64>()) {
        let system = drawn::system(seed);
        prop_assume!(system.is_some());
        let system = system.unwrap();
        let written = write_system(&system);
        prop_assert!(!written.contains('\n'));
        let read = parse_system(&written).map_err(|faults| told(&faults));
        prop_assert_eq!(read, Ok(system), "{}", written);
    }

    #[test]
    fn cut_or_changed_files_never_panic(at in 0..faults::GOOD.len(), length in 0_usize..40, with in ".{0,3}") {
        let edge = |at: usize| faults::GOOD.floor_char_boundary(at.min(faults::GOOD.len()));
        let (start, end) = (edge(at), edge(at + length));
        let text = format!("{}{with}{}", &faults::GOOD[..start], &faults::GOOD[end..]);
        if let Err(faults) = parse_system(&text) {
            prop_assert!(!faults.is_empty());
            prop_assert!(faults.iter().all(|fault| fault.line >= 1 && fault.column >= 1));
        }
    }
}

/// The generator reaches every kind of point, direction, load and hold, and most of what it draws
/// is a system.
#[test]
fn the_drawn_systems_say_everything_that_the_form_can_say() {
    let drawn: Vec<_> = (0..400).filter_map(drawn::system).collect();
    assert!(drawn.len() > 300, "{}", drawn.len());
    let all: String = drawn.iter().map(write_system).collect();
    for said in [
        "\"origin\"",
        "\"on\":",
        "\"sum\":",
        "\"resultant\":",
        "\"shapes\":",
        "\"rectangle\"",
        "\"triangle\"",
        "\"disc\"",
        "\"semicircle\"",
        "\"quarter-circle\"",
        "\"points\":\"left\"",
        "\"hole\":true",
        "\"mass_per_area\":",
        "\"apex\":",
        "\"rests\":",
        "\"0 m\"",
        "\"fraction\":",
        "\"middle\"",
        "\"foot\"",
        "\"tip\"",
        "\"up\"",
        "\"down\"",
        "\"left\"",
        "\"right\"",
        "\"x-axis\"",
        "\"towards\":",
        "\"along\":",
        "\"across\":",
        "\"with\":",
        "\"up\":true",
        "\"up\":false",
        "\"onward\":false",
        "\"left\":false",
        "\"couple\":",
        "\"first\":",
        "\"last\":",
        "\"hinge\"",
        "\"push\"",
        "\"line\"",
        "\"built-in\"",
        "\"rough\"",
        "\"base\"",
        "\"as-needed\"",
        "\"up_to\":",
        "\"limiting\":",
        "\"by\":",
        "\"knot\":true",
        "\"same_as\":",
        "\"si\":",
        "\"order\":",
        "\"reaches\":",
        "\"vanishes\":",
        "\"slips\":",
        "\"topples\":",
        "\"sought\"",
        "\"horizontal\":",
        "\"vertical\":",
        "\"turns\":\"clockwise\"",
        "\"turns\":\"anticlockwise\"",
    ] {
        assert!(all.contains(said), "{said}");
    }
}
