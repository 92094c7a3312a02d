-- After every migration: what the service's own role, reelproof_service, may do. It owns nothing, so that it can neither change a
-- table nor take a trigger away; on tables of records it has no right to change or remove a row either. Which tables those are is
-- read from their triggers, so that a new table needs no line here. With one user for all, triggers alone guard.
do
$$
declare
    entry  record;
    rights text;
begin
    -- Copies of the service that start together grant one after the other.
    perform pg_advisory_xact_lock(hashtextextended('reelproof grants', 0));

    if not exists (select from pg_roles where rolname = 'reelproof_service') then
        if not (select rolsuper or rolcreaterole from pg_roles where rolname = current_user) then
            raise notice 'role reelproof_service is not there and % may not create it: triggers alone keep records', current_user;
            return;
        end if;
        begin
            -- Without a password: a server that asks for one lets nobody in before the plant sets one.
            create role reelproof_service login;
        exception
            when duplicate_object or unique_violation then null; -- made for another database of this server just now
        end;
    end if;
    if current_user = 'reelproof_service' then
        return; -- the one user for all: an owner keeps its rights
    end if;

    execute format('grant usage on schema %I to reelproof_service', current_schema());
    for entry in
        select c.relname,
               c.relkind,
               bool_or(t.tgtype & 16 <> 0) as never_updated,
               bool_or(t.tgtype & 8 <> 0)  as never_deleted
        from pg_class c
                 left join pg_trigger t
                           on t.tgrelid = c.oid and t.tgfoid = to_regproc(format('%I.refuse_change', current_schema()))
        where c.relnamespace = current_schema()::regnamespace
          and c.relkind in ('r', 'p', 'v', 'm', 'S')
          and not c.relispartition -- rows are reached through the whole table only
          and pg_has_role(current_user, c.relowner, 'usage')
          and not exists (select from pg_depend d where d.objid = c.oid and d.classid = 'pg_class'::regclass and d.deptype = 'e')
        group by c.oid, c.relname, c.relkind
        order by c.relname
        loop
            if entry.relkind = 'S' then
                execute format('grant usage on sequence %I to reelproof_service', entry.relname);
                continue;
            end if;
            rights := case
                          when entry.relkind in ('v', 'm') or entry.relname = 'flyway_schema_history' then 'select'
                          else 'select, insert'
                              || case when entry.never_updated then '' else ', update' end
                              || case when entry.never_deleted then '' else ', delete' end
                end;
            execute format('revoke all on table %I from reelproof_service', entry.relname);
            execute format('grant %s on table %I to reelproof_service', rights, entry.relname);
        end loop;
end
$$;
