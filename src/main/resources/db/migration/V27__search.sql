-- What a search looks through: one row for each key of each reel, order, certificate, customer and product.

-- The keys are made by dev.reelproof.search.SearchKeys, and by nothing here. They are not records: after a change of that rule the
-- service empties the table and makes them anew (dev.reelproof.store.search.SearchKeysMigration).
create table search_key (
    plant text        not null,
    -- reel, order, certificate, customer or product.
    what  text        not null check (what <> ''),
    -- Letters and digits from the beginning of one of the name's words to its end, folded; in the order of code points.
    key   text        not null collate "C" check (key <> ''),
    -- Whether it is the key of the whole name, which comes first among equals.
    whole boolean     not null,
    -- The number, order, customer or product as registered.
    name  text        not null collate "C",
    -- When a reel was registered or a certificate issued; of the others, when the first reel or certificate named it.
    at    timestamptz not null,
    primary key (plant, what, key, whole, name)
);

-- What is of a few weeks, by its keys.
create index search_key_within on search_key (plant, what, at, key, whole, name);

create index search_key_at on search_key (plant, what, at desc, name) where whole;

-- What belongs to an order, a customer or a product, the newest first.
create index reel_of_order on reel (plant, order_number, registered desc, id) where order_number is not null;
create index reel_of_customer on reel (plant, customer, registered desc, id) where customer is not null;
create index reel_of_product on reel (plant, product, registered desc, id);
create index certificate_of_order on certificate (plant, order_number, issued desc, number, issue) where order_number is not null;
create index certificate_of_customer on certificate (plant, customer, issued desc, number, issue) where customer is not null;
create index certificate_newest on certificate (plant, issued desc, number, issue);
