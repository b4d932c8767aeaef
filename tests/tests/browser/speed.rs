//! How the page's arithmetic compares with the same code compiled for this machine.

use crate::harness::journey;
use standfast_core::document::Document;
use standfast_core::report::assess;
use std::time::Instant;

/// Reports both times and their ratio; it fails only where the page has become unusably slow. The native
/// side is as optimised as the tests build the core, the page as small as it can be.
#[test]
fn assess_in_the_page_against_native() {
    journey("speed", 1280, 800, |page| async move {
        let script = r#"
            const done = arguments[arguments.length - 1];
            import(new URL('standfast.js', location.href)).then(async m => {
                await m.default();
                const doc = JSON.parse(arguments[0]), rounds = 2000;
                m.assess_rounds(doc, 200);
                const start = performance.now();
                if (m.assess_rounds(doc, rounds) !== rounds) throw new Error('not every round was assessed');
                const alone = (performance.now() - start) / rounds * 1000;
                const again = performance.now();
                for (let k = 0; k < 200; k++) m.assess(doc);
                done([alone, (performance.now() - again) / 200 * 1000]);
            }).catch(e => done('failed: ' + e));
        "#;
        let document = serde_json::Value::from(standfast_core::example::THREE_WHEEL);
        let answer = page.driver.execute_async(script, vec![document]).await?.json().clone();
        let times: Vec<f64> = answer.as_array().into_iter().flatten().filter_map(serde_json::Value::as_f64).collect();
        let [wasm, handed_over] = times[..] else { return Err(format!("{answer}").into()) };
        let document = Document::from_json(standfast_core::example::THREE_WHEEL)?;
        let rounds = 2000;
        let start = Instant::now();
        for _ in 0..rounds {
            std::hint::black_box(assess(std::hint::black_box(&document)));
        }
        let native = start.elapsed().as_secs_f64() * 1e6 / f64::from(rounds);
        println!("one whole check: page {wasm:.0} us, native {native:.0} us, ratio {:.1}", wasm / native);
        println!("in the page with the report handed to JavaScript: {handed_over:.0} us");
        assert!(wasm < 20_000.0, "one whole check takes {wasm:.0} us in the page");
        Ok(())
    });
}
