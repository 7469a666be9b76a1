package rainward.feed.reading;

import com.fasterxml.jackson.databind.JsonNode;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/** Feature collections: each feature by itself, a broken one named and left out. */
public final class Features {

    private Features() {}

    /**
     * What could be read.
     *
     * @param items in the order of the document
     * @param notes what was left out
     */
    public record Read<T>(List<T> items, List<String> notes) {

        public Read {
            items = List.copyOf(items);
            notes = List.copyOf(notes);
        }
    }

    /** One feature, or why it is left out. */
    public record One<T>(Optional<T> item, String why) {

        public static <T> One<T> of(T item) {
            return new One<>(Optional.of(item), "");
        }

        public static <T> One<T> leftOut(String why) {
            return new One<>(Optional.empty(), why);
        }
    }

    public static <T> Read<T> read(byte[] body, String what, Function<JsonNode, One<T>> each)
            throws Unreadable {
        JsonNode root = Json.read(body);
        JsonNode features = root.has("@graph") ? root.path("@graph") : root.path("features");
        if (!features.isArray()) {
            throw new Unreadable("sent a list of " + what + " without any features");
        }
        Notes notes = Notes.ofEntries();
        List<T> items = new ArrayList<>();
        for (JsonNode feature : features) {
            JsonNode properties = feature.has("properties") ? feature.path("properties") : feature;
            One<T> one = each.apply(properties);
            one.item().ifPresentOrElse(items::add, () -> notes.leftOut(what, one.why()));
        }
        return new Read<>(items, notes.all());
    }
}
