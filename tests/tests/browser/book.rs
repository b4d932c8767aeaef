//! The truck book: kept over reloads, beside other tabs, without room, without a database, through a crash.

use crate::harness::{Outcome, Page, journey};
use serde_json::json;
use thirtyfour::prelude::*;

type Found<T> = Result<T, Box<dyn std::error::Error + Send + Sync>>;

/// To the trucks, and the truck of the check kept as a new one.
async fn keep_truck(page: &Page) -> Outcome {
    page.tap("place-trucks").await?;
    page.tap("keep-new").await?;
    page.wait("a truck", async || Ok(trucks(page).await?.len() == 1)).await?;
    settled(page).await
}

/// The names of the trucks that are shown.
async fn trucks(page: &Page) -> Found<Vec<String>> {
    let mut names = Vec::new();
    for element in page.driver.find_all(By::Css(".trucks .head .name")).await? {
        names.push(element.text().await?);
    }
    Ok(names)
}

async fn expect_trucks(page: &Page, wanted: &[&str]) -> Outcome {
    page.wait(&format!("trucks {wanted:?}"), async || {
        let names = trucks(page).await?;
        let like = |(name, wanted): (&String, &&str)| name.starts_with(wanted);
        Ok(names.len() == wanted.len() && names.iter().zip(wanted).all(like))
    })
    .await
}

/// What the database holds, by name.
async fn kept(page: &Page) -> Found<Vec<(String, String)>> {
    let script = "const done = arguments[0]; const open = indexedDB.open('standfast'); open.onsuccess = () => {
        const store = open.result.transaction('book').objectStore('book');
        const keys = store.getAllKeys(), values = store.getAll();
        values.onsuccess = () => { open.result.close(); done(keys.result.map((k, n) => [k, values.result[n]])); };
    };";
    Ok(page.driver.execute_async(script, Vec::new()).await?.convert()?)
}

/// Waits until the last change is in the database.
async fn settled(page: &Page) -> Outcome {
    page.wait("what is kept", async || {
        Ok(kept(page).await?.iter().any(|(key, text)| key.starts_with("truck/") && text.contains("\"record\"")))
    })
    .await
}

async fn again(page: &Page, name: &str) -> Outcome {
    page.driver.refresh().await?;
    page.find(name).await.map(drop)
}

/// Opens the only truck, and gives it another name.
async fn rename(page: &Page, name: &str) -> Outcome {
    if !page.there("truck-name").await {
        page.driver.find(By::Css(".trucks .head")).await?.click().await?;
    }
    let field = page.find("truck-name").await?;
    field.scroll_into_view().await?;
    field.focus().await?;
    field.send_keys(Key::Control + "a").await?;
    field.send_keys(name).await?;
    field.send_keys(Key::Tab + "").await?;
    Ok(())
}

async fn run(page: &Page, script: &str) -> Outcome {
    page.driver.execute(script, Vec::new()).await?;
    Ok(())
}

/// Runs a script in every page before its own.
async fn before_every_page(page: &Page, script: &str) -> Found<String> {
    let answer =
        page.driver.cdp().send_raw("Page.addScriptToEvaluateOnNewDocument", json!({ "source": script })).await?;
    Ok(answer["identifier"].as_str().unwrap_or_default().to_owned())
}

/// Collects the texts of files that the page hands out.
const COLLECT: &str = "window.handed = []; const make = URL.createObjectURL;
    URL.createObjectURL = blob => { blob.text().then(text => handed.push(text)); return make.call(URL, blob); };";

async fn handed_out(page: &Page) -> Found<String> {
    let text = page.driver.execute("return handed.join('')", Vec::new()).await?;
    Ok(text.json().as_str().unwrap_or_default().to_owned())
}

#[test]
fn a_truck_is_kept_and_used_again() {
    journey("book-kept", 1280, 800, |page| async move {
        keep_truck(&page).await?;
        again(&page, "place-trucks-page").await?;
        expect_trucks(&page, &["Copperbeck 3"]).await?;
        // Another truck in the check; the kept one is taken back into it, and the load stays.
        page.tap("place-check").await?;
        page.tap("example-2").await?;
        page.card("card-load").await?;
        let load = page.value("load.mass_kg").await?;
        page.tap("place-trucks").await?;
        page.driver.find(By::Css(".trucks .head")).await?.click().await?;
        let using = page.driver.find(By::Css("[data-testid^=set-up-use]")).await?;
        using.scroll_into_view().await?;
        using.click().await?;
        let of_book = page.find("of-book").await?.text().await?;
        assert!(of_book.contains("Copperbeck 3") && of_book.contains("is for the truck as it stands"), "{of_book}");
        assert_eq!(page.value("truck.wheelbase_m").await?, "1400");
        // Otherwise than it was kept: said here, and field by field where it is kept.
        page.enter("truck.battery.fitted_kg", "700").await?;
        page.wait("the battery", async || {
            Ok(page.find("of-book").await?.text().await?.contains("The battery weighs 700"))
        })
        .await?;
        page.card("card-load").await?;
        assert_eq!(page.value("load.mass_kg").await?, load);
        page.tap("place-trucks").await?;
        let present = page.find("keep-present").await?.text().await?;
        assert!(present.contains("Battery fitted today: 860 kg \u{2192} 700 kg"), "{present}");
        page.tap("keep-update").await?;
        page.wait("as kept", async || {
            Ok(page.find("keep-present").await?.text().await?.contains("As it is kept there"))
        })
        .await
    });
}

#[test]
fn what_is_removed_comes_back() {
    journey("book-undo", 800, 1280, |page| async move {
        keep_truck(&page).await?;
        page.driver.find(By::Css(".trucks .head")).await?.click().await?;
        page.tap("truck-remove").await?;
        page.wait("no truck", async || Ok(trucks(&page).await?.is_empty())).await?;
        page.tap("book-undo").await?;
        expect_trucks(&page, &["Copperbeck 3"]).await?;
        again(&page, "place-trucks-page").await?;
        expect_trucks(&page, &["Copperbeck 3"]).await
    });
}

#[test]
fn two_tabs_lose_nothing_of_each_other() {
    journey("book-tabs", 1280, 800, |page| async move {
        keep_truck(&page).await?;
        let first = page.driver.window().await?;
        let second = page.driver.new_tab().await?;
        page.driver.switch_to_window(second.clone()).await?;
        page.driver.goto(&page.server.origin).await?;
        page.tap("place-trucks").await?;
        expect_trucks(&page, &["Copperbeck 3"]).await?;
        // What one changes shows in the other.
        rename(&page, "Blue one").await?;
        // From now on this one cannot read what the other one writes, as if both wrote at the same moment.
        let deaf = "const begin = IDBDatabase.prototype.transaction;
            IDBDatabase.prototype.transaction = function (names, mode) {
                if (mode !== 'readwrite') throw new DOMException('deaf', 'AbortError');
                return begin.apply(this, arguments);
            };";
        run(&page, deaf).await?;
        page.driver.switch_to_window(first.clone()).await?;
        expect_trucks(&page, &["Blue one"]).await?;
        rename(&page, "Ours").await?;
        page.wait("ours kept", async || Ok(kept(&page).await?.iter().any(|(_, text)| text.contains("Ours")))).await?;
        page.driver.switch_to_window(second).await?;
        expect_trucks(&page, &["Blue one"]).await?;
        rename(&page, "Theirs").await?;
        let met = page.find("book-met").await?.text().await?;
        assert!(met.contains("Both are kept") && met.contains("Theirs (this tab, "), "{met}");
        expect_trucks(&page, &["Ours", "Theirs (this tab, "]).await?;
        page.driver.switch_to_window(first).await?;
        again(&page, "place-trucks-page").await?;
        expect_trucks(&page, &["Ours", "Theirs (this tab, "]).await
    });
}

#[test]
fn a_check_in_each_of_two_tabs() {
    journey("draft-tabs", 1280, 800, |page| async move {
        page.card("card-load").await?;
        page.enter("load.name", "Kiln roof").await?;
        let first = page.driver.window().await?;
        let second = page.driver.new_tab().await?;
        page.driver.switch_to_window(second.clone()).await?;
        page.open().await?;
        page.card("card-load").await?;
        assert_eq!(page.value("load.name").await?, "Kiln roof");
        page.enter("load.name", "Clay mixer").await?;
        page.driver.switch_to_window(first.clone()).await?;
        page.enter("load.name", "Kiln roof, lighter").await?;
        page.reload().await?;
        page.card("card-load").await?;
        assert_eq!(page.value("load.name").await?, "Kiln roof, lighter");
        page.driver.switch_to_window(second).await?;
        page.reload().await?;
        page.card("card-load").await?;
        assert_eq!(page.value("load.name").await?, "Clay mixer");
        // Closed, its check is still there for the asking.
        page.driver.close_window().await?;
        page.driver.switch_to_window(first).await?;
        page.reload().await?;
        assert!(page.find("drafts").await?.text().await?.contains("Clay mixer"));
        page.tap("draft-show").await?;
        page.card("card-load").await?;
        page.wait("the other check", async || Ok(page.value("load.name").await? == "Clay mixer")).await?;
        page.tap("undo").await?;
        page.wait("one's own", async || Ok(page.value("load.name").await? == "Kiln roof, lighter")).await
    });
}

const FULL: &str = "const full = () => { throw new DOMException('no room', 'QuotaExceededError'); };
    window.put = IDBObjectStore.prototype.put; IDBObjectStore.prototype.put = full; Storage.prototype.setItem = full;";

#[test]
fn without_room_it_says_so_and_saves_to_a_file() {
    journey("book-full", 1280, 800, |page| async move {
        page.tap("place-trucks").await?;
        page.wait("the store", async || Ok(page.find("book-kept").await?.text().await?.contains("Kept"))).await?;
        run(&page, FULL).await?;
        page.tap("keep-new").await?;
        let unkept = page.find("book-unkept").await?.text().await?;
        assert!(unkept.contains("no room") && unkept.contains("1 entry is only in this tab"), "{unkept}");
        expect_trucks(&page, &["Copperbeck 3"]).await?;
        run(&page, COLLECT).await?;
        page.tap("book-save-now").await?;
        page.wait("the file", async || Ok(handed_out(&page).await?.contains("\"name\": \"Copperbeck 3"))).await?;
        let file: serde_json::Value = serde_json::from_str(&handed_out(&page).await?)?;
        assert_eq!((&file["format"], file["trucks"].as_array().map(Vec::len)), (&json!("standfast-book"), Some(1)));
        assert_eq!(kept(&page).await?.len(), 0);
        // Another change meanwhile, and room again: both are written.
        page.tap("attachment-examples").await?;
        page.wait("four entries", async || {
            Ok(page.find("book-unkept").await?.text().await?.contains("4 entries are only"))
        })
        .await?;
        run(&page, "IDBObjectStore.prototype.put = window.put;").await?;
        page.tap("book-again").await?;
        page.wait("nothing unkept", async || Ok(!page.there("book-unkept").await)).await?;
        again(&page, "place-trucks-page").await?;
        expect_trucks(&page, &["Copperbeck 3"]).await?;
        page.find("attachment-example-clamp").await.map(drop)
    });
}

#[test]
fn without_a_database_the_plain_storage_takes_over_and_gives_back() {
    journey("book-plain", 1280, 800, |page| async move {
        let none =
            before_every_page(&page, "Object.defineProperty(window, 'indexedDB', { value: undefined });").await?;
        page.open().await?;
        page.tap("place-trucks").await?;
        page.tap("keep-new").await?;
        expect_trucks(&page, &["Copperbeck 3"]).await?;
        page.wait("the plain storage", async || Ok(page.kept().await?.contains("standfast.v1.book"))).await?;
        again(&page, "place-trucks-page").await?;
        expect_trucks(&page, &["Copperbeck 3"]).await?;
        assert!(page.find("book-kept").await?.text().await?.contains("plain storage"));
        // With a database again, everything is in that.
        let script = json!({ "identifier": none });
        page.driver.cdp().send_raw("Page.removeScriptToEvaluateOnNewDocument", script).await?;
        again(&page, "place-trucks-page").await?;
        expect_trucks(&page, &["Copperbeck 3"]).await?;
        settled(&page).await?;
        page.wait("the plain storage empty", async || Ok(!page.kept().await?.contains("standfast.v1.book"))).await
    });
}

#[test]
fn where_nothing_is_kept_it_says_so_and_saves_to_a_file() {
    journey("book-nowhere", 1280, 800, |page| async move {
        let script = "for (const name of ['indexedDB', 'localStorage', 'sessionStorage'])
            Object.defineProperty(window, name, { get() { throw new DOMException('no', 'SecurityError'); } });";
        before_every_page(&page, script).await?;
        page.driver.goto(&page.server.origin).await?;
        page.tap("place-trucks").await?;
        page.tap("keep-new").await?;
        expect_trucks(&page, &["Copperbeck 3"]).await?;
        assert!(page.find("book-unkept").await?.text().await?.contains("keeps nothing"));
        run(&page, COLLECT).await?;
        page.tap("save-file").await?;
        page.wait("the file", async || Ok(handed_out(&page).await?.contains("standfast-book"))).await
    });
}

/// The page is loaded again while three entries are being written: none of them is there, and nothing is damaged.
#[test]
fn a_write_that_is_cut_off_leaves_what_was() {
    journey("book-crash", 1280, 800, |page| async move {
        keep_truck(&page).await?;
        let before = kept(&page).await?;
        run(
            &page,
            "const put = IDBObjectStore.prototype.put; let count = 0;
             IDBObjectStore.prototype.put = function (...values) {
                 const request = put.apply(this, values);
                 if (++count === 3) {
                     // The transaction stays open until the page is gone.
                     const on = () => { this.get('clock').onsuccess = on; };
                     on();
                     location.reload();
                 }
                 return request;
             };
             window.old = true;",
        )
        .await?;
        page.tap("attachment-examples").await?;
        page.wait("the page anew", async || {
            Ok(page.driver.execute("return window.old !== true", Vec::new()).await?.json() == &json!(true))
        })
        .await?;
        page.find("place-trucks-page").await?;
        expect_trucks(&page, &["Copperbeck 3"]).await?;
        assert_eq!(kept(&page).await?, before);
        assert!(!page.there("attachment-example-clamp").await && !page.there("book-damaged").await);
        page.tap("attachment-examples").await?;
        page.find("attachment-example-clamp").await?;
        page.wait("three more", async || Ok(kept(&page).await?.len() == before.len() + 3)).await
    });
}

#[test]
fn a_damaged_entry_is_named_and_left_alone() {
    journey("book-damaged", 1280, 800, |page| async move {
        keep_truck(&page).await?;
        run(
            &page,
            "const open = indexedDB.open('standfast'); open.onsuccess = () => {
                 open.result.transaction('book', 'readwrite').objectStore('book').put('{\"revision\":9,', 'truck/broken');
                 open.result.close(); };",
        )
        .await?;
        page.wait("the damage", async || Ok(kept(&page).await?.iter().any(|(key, _)| key == "truck/broken"))).await?;
        again(&page, "place-trucks-page").await?;
        let damaged = page.find("book-damaged").await?.text().await?;
        assert!(damaged.contains("truck/broken") && damaged.contains("not deleted"), "{damaged}");
        expect_trucks(&page, &["Copperbeck 3"]).await?;
        run(&page, COLLECT).await?;
        page.tap("book-damaged-save").await?;
        page.wait("its text", async || Ok(handed_out(&page).await?.contains("{\"revision\":9,"))).await?;
        assert!(kept(&page).await?.iter().any(|(key, _)| key == "truck/broken"));
        Ok(())
    });
}
