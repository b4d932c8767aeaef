//! The browser's database: one text for each entry, and one count of all writes.

use super::kept;
use super::place::{Failure, Read};
use super::record::Key;
use super::settle::{Outside, Present, Settled, Wished, settle};
use idb::{Database, DatabaseEvent, Error, Factory, ObjectStore, Query, Transaction, TransactionMode};
use std::collections::BTreeMap;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{DomException, IdbTransaction};

const NAME: &str = "standfast";
const VERSION: u32 = 1;
const BOOK: &str = "book";
/// The count of all writes: no entry's name is without a stroke.
const CLOCK: &str = "clock";

/// The database.
#[derive(Debug)]
pub struct Indexed {
    database: Database,
}

impl Indexed {
    /// Opens it, made where there is none.
    ///
    /// # Errors
    /// Where the browser has none for this page.
    pub async fn open() -> Result<Self, Failure> {
        let factory = Factory::new().map_err(failure)?;
        let mut request = factory.open(NAME, Some(VERSION)).map_err(failure)?;
        request.on_upgrade_needed(|event| {
            let database = event.database().ok();
            if let Some(database) = database.filter(|d| !d.store_names().iter().any(|n| n == BOOK)) {
                // Where that fails there is no such store, and every use of it says so.
                let _ = database.create_object_store(BOOK, idb::ObjectStoreParams::new());
            }
        });
        let mut database = request.await.map_err(failure)?;
        // A newer page may want to change it: it must not wait for this one.
        database.on_version_change(|event| {
            if let Ok(database) = event.database() {
                database.close();
            }
        });
        Ok(Self { database })
    }

    fn begin(&self, mode: TransactionMode) -> Result<(ObjectStore, IdbTransaction), Error> {
        let transaction = self.database.transaction(&[BOOK], mode)?;
        let store = transaction.object_store(BOOK)?;
        Ok((store, transaction.into()))
    }

    /// The entries of these keys, or all.
    ///
    /// # Errors
    /// Where the browser fails.
    pub async fn read(&self, keys: Option<&[Key]>) -> Result<Read, Failure> {
        self.read_texts(keys).await.map_err(failure)
    }

    async fn read_texts(&self, keys: Option<&[Key]>) -> Result<Read, Error> {
        let (store, _) = self.begin(TransactionMode::ReadOnly)?;
        let clock = clock(&store).await?;
        let mut texts = Vec::new();
        match keys {
            Some(keys) => {
                for key in keys {
                    let name = key.to_string();
                    let text = get(&store, &name).await?;
                    texts.push((name, text));
                }
            }
            None => {
                let names = store.get_all_keys(None, None)?.await?;
                let values = store.get_all(None, None)?.await?;
                let named = names.into_iter().zip(values).filter_map(|(name, value)| Some((name.as_string()?, value)));
                // What is no text was not written by this page: it is damaged as it stands.
                let text = |value: JsValue| value.as_string().unwrap_or_else(|| format!("{value:?}"));
                texts.extend(named.filter(|(name, _)| name != CLOCK).map(|(name, value)| (name, Some(text(value)))));
            }
        }
        Ok(Read { clock, texts })
    }

    /// Writes changes: what is there now is read in the very transaction that writes, all of it or nothing.
    ///
    /// # Errors
    /// Where the browser fails: then nothing is written.
    pub async fn write(&self, wishes: &[Wished], outside: &mut Outside<'_>) -> Result<Settled, Failure> {
        let (store, transaction) = self.begin(TransactionMode::ReadWrite).map_err(failure)?;
        let settled = match put_all(&store, wishes, outside).await {
            Ok(settled) => settled,
            Err(error) => {
                // It may be over already.
                let _ = transaction.abort();
                return Err(failure(error));
            }
        };
        match Transaction::from(transaction.clone()).await {
            Ok(result) if result.is_committed() => Ok(settled),
            Ok(_) => Err(transaction.error().map_or_else(|| Failure::Other(String::new()), |e| named(&e))),
            Err(error) => Err(transaction.error().map_or_else(|| failure(error), |e| named(&e))),
        }
    }
}

async fn put_all(store: &ObjectStore, wishes: &[Wished], outside: &mut Outside<'_>) -> Result<Settled, Error> {
    let clock = clock(store).await?;
    let mut present = BTreeMap::new();
    for wished in wishes {
        let key = &wished.change.key;
        let name = key.to_string();
        present.insert(key.clone(), Present::of(&name, get(store, &name).await?.as_deref()));
    }
    let settled = settle(wishes, &present, clock, outside);
    if !settled.write.is_empty() {
        store.put(&JsValue::from_str(&settled.clock.to_string()), Some(&JsValue::from_str(CLOCK)))?;
    }
    for (key, slot) in &settled.write {
        let name = JsValue::from_str(&key.to_string());
        match slot {
            Some(slot) => drop(store.put(&JsValue::from_str(&kept::to_text(slot)), Some(&name))?),
            None => drop(store.delete(name)?),
        }
    }
    Ok(settled)
}

async fn get(store: &ObjectStore, name: &str) -> Result<Option<String>, Error> {
    let value = store.get(Query::Key(JsValue::from_str(name)))?.await?;
    Ok(value.map(|value| value.as_string().unwrap_or_else(|| format!("{value:?}"))))
}

async fn clock(store: &ObjectStore) -> Result<u64, Error> {
    Ok(get(store, CLOCK).await?.and_then(|text| text.parse().ok()).unwrap_or_default())
}

fn named(exception: &DomException) -> Failure {
    Failure::of(&exception.name(), exception.message())
}

fn failure(error: Error) -> Failure {
    let exception = match &error {
        Error::DomException(exception) => Some(exception.clone()),
        Error::UpdateFailed(value) | Error::AddFailed(value) | Error::TransactionOpenFailed(value) => {
            value.dyn_ref::<DomException>().cloned()
        }
        _ => None,
    };
    exception.map_or_else(|| Failure::Other(error.to_string()), |e| named(&e))
}
