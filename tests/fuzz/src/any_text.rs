//! Any text, as lines at any problem.
#![no_main]

mod common;

use common::{Scene, enter, scenes};
use libfuzzer_sys::fuzz_target;
use std::sync::LazyLock;

static SCENES: LazyLock<Vec<Scene>> = LazyLock::new(scenes);

fuzz_target!(|data: &[u8]| {
    let Some((first, rest)) = data.split_first() else {
        return;
    };
    let scene = &SCENES[usize::from(*first >> 1) % SCENES.len()];
    let session = if first & 1 == 0 { &scene.free } else { &scene.guided };
    let text = String::from_utf8_lossy(rest).into_owned();
    enter(session, text.split('\n').take(6).map(ToOwned::to_owned));
});
