//! How the page's arithmetic compares with the same code compiled for this machine.

use crate::harness::journey;
use standfast_core::document::Document;
use standfast_core::report::assess;
use std::time::Instant;

/// Reports the ratio; it fails only where the page has become unusably slow.
#[test]
fn assess_in_the_page_against_native() {
    journey("speed", 1280, 800, |page| async move {
        let script = r#"
            const done = arguments[arguments.length - 1];
            const file = performance.getEntriesByType('resource').map(e => e.name).find(u => u.endsWith('.js'));
            import(file).then(m => {
                const doc = JSON.parse(arguments[0]);
                for (let k = 0; k < 200; k++) m.assess(doc);
                const start = performance.now();
                for (let k = 0; k < 500; k++) m.assess(doc);
                done((performance.now() - start) / 500 * 1000);
            }).catch(e => done('failed: ' + e));
        "#;
        let document = serde_json::Value::from(standfast_core::example::THREE_WHEEL);
        let answer = page.driver.execute_async(script, vec![document]).await?.json().clone();
        let wasm = answer.as_f64().ok_or_else(|| format!("{answer}"))?;
        let document = Document::from_json(standfast_core::example::THREE_WHEEL)?;
        let rounds = 500;
        let start = Instant::now();
        for _ in 0..rounds {
            let report = assess(std::hint::black_box(&document));
            std::hint::black_box(serde_json::to_value(report)?);
        }
        let native = start.elapsed().as_secs_f64() * 1e6 / f64::from(rounds);
        println!(
            "assess with its report handed over: page {wasm:.0} us, native (optimised for the tests) {native:.0} us, ratio {:.1}",
            wasm / native
        );
        assert!(wasm < 50_000.0, "one assessment takes {wasm:.0} us in the page");
        Ok(())
    });
}
