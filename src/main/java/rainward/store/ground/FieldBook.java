package rainward.store.ground;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.generic.GenericType;
import org.jdbi.v3.core.statement.StatementContext;
import org.jdbi.v3.core.statement.Update;
import rainward.farm.Field;
import rainward.farm.GeoPoint;
import rainward.farm.MappedField;
import rainward.farm.Property;
import rainward.farm.SoilTexture;
import rainward.farm.Survey;
import rainward.store.row.Json;
import rainward.store.row.Line;

/** Properties, fields and their boundaries, by name. */
public final class FieldBook {

    private static final String PUT_FIELD = """
            insert into field (name, property, listed, latitude_deg, longitude_deg, area_ha,
              sand_fraction, clay_fraction, organic_matter_pct, slope_fraction, mixes, recipe,
              priority, boundary, imported_at)
            values (:name, :property, (select coalesce(max(listed), 0) + 1 from field),
              :latitude, :longitude, :area, :sand, :clay, :organic, :slope, :mixes, :recipe,
              :priority, :boundary, :at)
            on conflict (name) do update set property = :property, latitude_deg = :latitude,
              longitude_deg = :longitude, area_ha = :area, sand_fraction = :sand,
              clay_fraction = :clay, organic_matter_pct = :organic, slope_fraction = :slope,
              mixes = :mixes, recipe = :recipe, priority = :priority,
              boundary = coalesce(:boundary, field.boundary), imported_at = :at
            """;

    private static final String PUT_GATE = """
            insert into property values (:name, :latitude, :longitude, 1)
            on conflict (name) do update set latitude_deg = :latitude,
              longitude_deg = :longitude, gate_stated = 1
            """;

    /** A gate that somebody stated is worth more than the middle of some fields. */
    private static final String PUT_MIDDLE = """
            insert into property values (:name, :latitude, :longitude, 0)
            on conflict (name) do nothing
            """;

    private final Handle handle;

    public FieldBook(Handle handle) {
        this.handle = handle;
    }

    /**
     * Takes in what a file tells: new fields are added, known ones updated by name, and nothing
     * that is recorded about them is touched. Fields that the file does not name stay as they are.
     */
    public Taken take(Survey survey, Instant at) {
        survey.gates().forEach(gate -> put(PUT_GATE, gate));
        survey.middles().forEach(middle -> put(PUT_MIDDLE, middle));
        int added = 0;
        for (MappedField mapped : survey.fields()) {
            MappedField known = byPresentName(mapped);
            added += named(known.field().name()).isPresent() ? 0 : 1;
            put(known, at);
        }
        return new Taken(added, survey.fields().size() - added);
    }

    /** A file may still have the name that a field went by when it was written. */
    private MappedField byPresentName(MappedField mapped) {
        Field field = mapped.field();
        return presentName(field.name())
                .map(name -> new MappedField(called(field, name), mapped.boundaryGeoJson()))
                .orElse(mapped);
    }

    private static Field called(Field field, String name) {
        return new Field(
                name,
                field.property(),
                field.place(),
                field.areaHa(),
                field.ground(),
                field.wish());
    }

    /** The name that a field goes by now which once went by this one. */
    public Optional<String> presentName(String name) {
        return handle.createQuery(
                        "select called from field where name = :name and called is not null")
                .bind("name", name)
                .mapTo(String.class)
                .findOne();
    }

    /**
     * Gives a field another name. All that was written about it stays as it was said and is read
     * under the new name; a name that it had before may be taken again.
     *
     * @return false where another field goes by that name
     */
    public boolean rename(String was, String now) {
        Field field = named(was).orElseThrow();
        if (named(now).isPresent()
                || presentName(now).filter(n -> !n.equals(was)).isPresent()) {
            return false;
        }
        int listed = handle.createQuery("select listed from field where name = :was")
                .bind("was", was)
                .mapTo(Integer.class)
                .one();
        Optional<String> boundary = boundaryOf(was);
        handle.createUpdate("update field set listed = -(select max(abs(listed)) from field) - 1"
                        + " where name = :was")
                .bind("was", was)
                .execute();
        handle.createUpdate("update field set called = null where name = :now")
                .bind("now", now)
                .execute();
        put(new MappedField(called(field, now), boundary), importedAt(was));
        handle.createUpdate("update field set listed = :listed where name = :now")
                .bind("listed", listed)
                .bind("now", now)
                .execute();
        handle.createUpdate("update field set called = :now where name = :was or called = :was")
                .bind("now", now)
                .bind("was", was)
                .execute();
        return true;
    }

    /**
     * Takes a field out that nothing was ever recorded about, and its property where that has no
     * other.
     *
     * @return false where something is recorded
     */
    public boolean remove(String name) {
        String property = named(name).orElseThrow().property();
        boolean spokenOf =
                handle.createQuery("""
                        select exists (select 1 from journal where field = :name)
                            or exists (select 1 from ledger where field = :name)
                            or exists (select 1 from field where called = :name)
                        """).bind("name", name).mapTo(Boolean.class).one();
        if (spokenOf) {
            return false;
        }
        for (String step : List.of(
                "delete from soil_state where field = :name",
                "delete from field where name = :name",
                """
                delete from property where name = :property
                  and not exists (select 1 from field where property = :property)
                  and not exists (select 1 from rain where property = :property)
                """)) {
            handle.createUpdate(step)
                    .bind("name", name)
                    .bind("property", property)
                    .execute();
        }
        return true;
    }

    private Instant importedAt(String name) {
        return handle.createQuery("select imported_at from field where name = :name")
                .bind("name", name)
                .map((row, context) -> Instant.ofEpochMilli(row.getLong("imported_at")))
                .one();
    }

    private void put(String sql, Property property) {
        handle.createUpdate(sql)
                .bind("name", property.name())
                .bind("latitude", property.place().latitudeDeg())
                .bind("longitude", property.place().longitudeDeg())
                .execute();
    }

    /** Gives a field that is known another boundary, and the place and area that go with it. */
    public void bound(MappedField mapped, Instant at) {
        put(mapped, at);
    }

    /** Changes a field that is known; its boundary stays. */
    public void change(Field field, Instant at) {
        put(new MappedField(field, Optional.empty()), at);
    }

    private void put(MappedField mapped, Instant at) {
        Field field = mapped.field();
        Update update = handle.createUpdate(PUT_FIELD)
                .bind("name", field.name())
                .bind("property", field.property())
                .bind("latitude", field.place().latitudeDeg())
                .bind("longitude", field.place().longitudeDeg())
                .bind("area", field.areaHa())
                .bind("boundary", mapped.boundaryGeoJson().orElse(null))
                .bind("at", at.toEpochMilli());
        wish(ground(update, field.ground()), field.wish()).execute();
    }

    private static Update ground(Update update, Field.Ground ground) {
        return update.bind("sand", ground.texture().sandFraction())
                .bind("clay", ground.texture().clayFraction())
                .bind("organic", ground.texture().organicMatterPct())
                .bind("slope", ground.slopeFraction());
    }

    private static Update wish(Update update, Field.Wish wish) {
        return update.bind("mixes", Json.write(wish.mixes()))
                .bind("recipe", wish.recipe())
                .bind("priority", wish.priority());
    }

    /** Puts another soil and slope in place of those that a field came with. */
    public void ground(String field, Field.Ground ground) {
        ground(
                        handle.createUpdate("update field set sand_fraction = :sand,"
                                + " clay_fraction = :clay, organic_matter_pct = :organic,"
                                + " slope_fraction = :slope where name = :name"),
                        ground)
                .bind("name", field)
                .execute();
    }

    /** Every field, in the order in which they first came. */
    public List<Field> all() {
        return handle.createQuery("select * from field where called is null order by listed")
                .map(Line.of(FieldBook::field))
                .list();
    }

    public Optional<Field> named(String name) {
        return handle.createQuery("select * from field where name = :name and called is null")
                .bind("name", name)
                .map(Line.of(FieldBook::field))
                .findOne();
    }

    public List<Property> properties() {
        return handle.createQuery("select * from property order by name")
                .map((row, context) -> new Property(row.getString("name"), place(row)))
                .list();
    }

    /** The boundary of a field as it was imported, if it came with one. */
    public Optional<String> boundaryOf(String field) {
        return handle.createQuery(
                        "select boundary from field where name = :name and boundary is not null")
                .bind("name", field)
                .mapTo(String.class)
                .findOne();
    }

    /** Boundaries as they were imported, by field; of those that came with one. */
    public Map<String, String> boundaries() {
        return handle.createQuery(
                        "select name, boundary from field where boundary is not null and called is"
                                + " null")
                .setMapKeyColumn("name")
                .setMapValueColumn("boundary")
                .collectInto(new GenericType<Map<String, String>>() {});
    }

    private static Field field(ResultSet row, StatementContext context) throws SQLException {
        return new Field(
                row.getString("name"),
                row.getString("property"),
                place(row),
                row.getDouble("area_ha"),
                ground(row),
                new Field.Wish(
                        Json.readList(row.getString("mixes"), String.class),
                        row.getString("recipe"),
                        row.getDouble("priority")));
    }

    private static Field.Ground ground(ResultSet row) throws SQLException {
        SoilTexture texture = new SoilTexture(
                row.getDouble("sand_fraction"),
                row.getDouble("clay_fraction"),
                row.getDouble("organic_matter_pct"));
        return new Field.Ground(texture, row.getDouble("slope_fraction"));
    }

    private static GeoPoint place(ResultSet row) throws SQLException {
        return new GeoPoint(row.getDouble("latitude_deg"), row.getDouble("longitude_deg"));
    }

    /**
     * What an import changed.
     *
     * @param added fields that were not known before
     * @param updated fields that were
     */
    public record Taken(int added, int updated) {}
}
