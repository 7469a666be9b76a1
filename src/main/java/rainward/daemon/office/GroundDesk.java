package rainward.daemon.office;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.StringJoiner;
import rainward.farm.Field;
import rainward.farm.SoilTexture;
import rainward.farm.SurveyedSoil;
import rainward.feed.soil.SoilByPoint;
import rainward.feed.terms.Addresses;
import rainward.feed.terms.Pacing;
import rainward.store.Books;

/**
 * Where the soil of fields is asked for, kept and confirmed. Nobody waits for it: until a person
 * takes a proposal, a field keeps the soil that it came with.
 */
public final class GroundDesk {

    private final Office office;
    private final SoilByPoint surveys;

    public GroundDesk(Office office) {
        this(office, Pacing.real(office.home().path().toString().hashCode()));
    }

    /** A desk with its own way of waiting, for a clock that runs faster. */
    public GroundDesk(Office office, Pacing pacing) {
        this.office = office;
        this.surveys = new SoilByPoint(FeedDoor.client(office, pacing));
    }

    /** What became of a proposal. */
    public enum State {
        /** Waits for somebody to look at it. */
        PROPOSED,
        /** Stands in the field's place. */
        TAKEN,
        /** Somebody prefers the soil that the field came with. */
        LEFT
    }

    /**
     * What is kept of a field's survey: values, since keys of surveys change from year to year.
     *
     * @param sandFraction share of sand, 0 to 1
     * @param clayFraction share of clay, 0 to 1
     * @param organicMatterPct organic matter [weight %]
     * @param slopeFraction rise over run, where the survey has it
     * @param source which survey
     * @param fetchedAt when
     * @param described what it is made of, in words
     * @param state what became of it
     */
    public record Known(
            double sandFraction,
            double clayFraction,
            double organicMatterPct,
            Optional<Double> slopeFraction,
            String source,
            Instant fetchedAt,
            String described,
            State state) {

        static Known of(SurveyedSoil soil) {
            return new Known(
                    soil.texture().sandFraction(),
                    soil.texture().clayFraction(),
                    soil.texture().organicMatterPct(),
                    soil.slopeFraction().stream().boxed().findFirst(),
                    soil.origin().source(),
                    soil.origin().fetchedAt(),
                    soil.described(),
                    State.PROPOSED);
        }

        Known now(State other) {
            return new Known(
                    sandFraction,
                    clayFraction,
                    organicMatterPct,
                    slopeFraction,
                    source,
                    fetchedAt,
                    described,
                    other);
        }

        Field.Ground ground(Field field) {
            return new Field.Ground(
                    new SoilTexture(sandFraction, clayFraction, organicMatterPct),
                    slopeFraction.orElse(field.ground().slopeFraction()));
        }
    }

    /**
     * A field and what a survey says of it.
     *
     * @param field its name
     * @param inUse what the plan reckons with
     * @param survey what was fetched, if anything
     */
    public record Line(String field, Field.Ground inUse, Optional<Known> survey) {}

    /** Every field. */
    public List<Line> all() {
        return office.store()
                .read(books -> books.fields().all().stream()
                        .map(field ->
                                new Line(field.name(), field.ground(), known(books, field.name())))
                        .toList());
    }

    /**
     * Asks for fields that no survey was fetched for.
     *
     * @param most fields in one go
     * @return what failed, for the person; nothing where all went well
     */
    public List<String> ask(int most) {
        Instant now = office.now();
        List<Field> open = office.store()
                .read(books -> books.fields().all().stream()
                        .filter(field -> known(books, field.name()).isEmpty())
                        .limit(most)
                        .toList());
        for (Field field : open) {
            Optional<String> edge = office.store()
                    .read(books -> books.fields().boundaryOf(field.name()))
                    .flatMap(GroundDesk::wkt);
            SoilByPoint.Proposal proposal = surveys.at(field.place(), edge, now);
            office.store().inTransaction(books -> {
                proposal.answers().forEach(books.forecasts()::add);
                proposal.soil().ifPresent(soil -> put(books, field.name(), Known.of(soil)));
                return field;
            });
            if (proposal.soil().isEmpty()) {
                // A service in trouble is not asked for the other fields in the same go.
                return proposal.notes();
            }
        }
        return List.of();
    }

    /** Puts the survey's soil in the field's place; false where there is none. */
    public boolean take(String name) {
        return office.store().inTransaction(books -> {
            Optional<Known> known = known(books, name);
            Optional<Field> field = books.fields().named(name);
            if (known.isEmpty() || field.isEmpty()) {
                return false;
            }
            books.fields().ground(name, known.get().ground(field.get()));
            put(books, name, known.get().now(State.TAKEN));
            return true;
        });
    }

    /** Leaves the field's soil as it is; false where there is no proposal. */
    public boolean leave(String name) {
        return office.store().inTransaction(books -> {
            Optional<Known> known = known(books, name);
            known.ifPresent(k -> put(books, name, k.now(State.LEFT)));
            return known.isPresent();
        });
    }

    private void put(Books books, String field, Known known) {
        books.lastKnown().put(nameOf(field), office.now(), known);
    }

    private static Optional<Known> known(Books books, String field) {
        return books.lastKnown().find(nameOf(field), Known.class);
    }

    private static String nameOf(String field) {
        return "ground/" + field;
    }

    /** An outline as well-known text, from numbers only; nothing else reaches the question. */
    static Optional<String> wkt(String geoJson) {
        try {
            JsonNode geometry = new ObjectMapper().readTree(geoJson);
            JsonNode coordinates = geometry.path("coordinates");
            boolean one = geometry.path("type").asText().equals("Polygon");
            StringJoiner parts = new StringJoiner(", ", "MULTIPOLYGON(", ")");
            for (JsonNode polygon : one ? List.of(coordinates) : list(coordinates)) {
                StringJoiner rings = new StringJoiner(", ", "(", ")");
                for (JsonNode ring : polygon) {
                    StringJoiner places = new StringJoiner(", ", "(", ")");
                    ring.forEach(
                            place -> places.add(Addresses.degrees(place.path(0).asDouble(), 6) + " "
                                    + Addresses.degrees(place.path(1).asDouble(), 6)));
                    rings.add(places.toString());
                }
                parts.add(rings.toString());
            }
            return coordinates.isEmpty() ? Optional.empty() : Optional.of(parts.toString());
        } catch (JsonProcessingException e) {
            return Optional.empty();
        }
    }

    private static List<JsonNode> list(JsonNode nodes) {
        List<JsonNode> all = new ArrayList<>();
        nodes.forEach(all::add);
        return all;
    }
}
