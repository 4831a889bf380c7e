//! Any text as the file of a problem, which is then solved, worked and opened.
#![no_main]

use leverwright::lesson::{check_file, parse_system};
use leverwright::session::Session;
use leverwright::text::Words;
use leverwright::working::{Method, derive, settle, told};
use libfuzzer_sys::fuzz_target;

fuzz_target!(|data: &[u8]| {
    let Ok(text) = std::str::from_utf8(data) else {
        return;
    };
    let _ = check_file(text);
    let Ok(system) = parse_system(text) else {
        return;
    };
    if let Ok(settled) = settle(&system) {
        for method in [Method::Components, Method::LeverArms, Method::Coordinates, Method::Triangle] {
            if let Ok(working) = derive(&system, &settled.values, method, None) {
                let lines = format!("{:?}", told(&system, &working, &settled.values));
                assert!(!lines.contains("NaN"), "{lines}");
            }
        }
    }
    let _ = Session::start_general(&system, Words::english());
});
