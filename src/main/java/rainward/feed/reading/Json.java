package rainward.feed.reading;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.core.json.JsonReadFeature;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;

import java.io.IOException;
import java.util.OptionalDouble;

/**
 * Strict reading: the whole document or nothing. NaN is let in as a number so that the one value is
 * left out and named, not the document.
 */
public final class Json {

    private static final JsonMapper MAPPER = JsonMapper.builder(JsonFactory.builder()
                    .streamReadConstraints(StreamReadConstraints.builder()
                            .maxNestingDepth(100)
                            .maxDocumentLength(32L * 1_048_576)
                            .maxStringLength(1_000_000)
                            .maxNumberLength(100)
                            .build())
                    .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
                    .enable(JsonReadFeature.ALLOW_NON_NUMERIC_NUMBERS)
                    .build())
            .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
            .build();

    private Json() {}

    /** The document, an object or a list. */
    public static JsonNode read(byte[] body) throws Unreadable {
        try {
            JsonNode root = MAPPER.readTree(body);
            if (root == null || !root.isContainerNode()) {
                throw new Unreadable("sent something that is not a JSON document");
            }
            return root;
        } catch (JsonProcessingException e) {
            String where = e.getLocation() == null
                    ? ""
                    : ", broken at line " + e.getLocation().getLineNr() + " column "
                            + e.getLocation().getColumnNr();
            throw new Unreadable("sent a JSON document that is not whole" + where);
        } catch (IOException e) {
            throw new Unreadable("sent a JSON document that cannot be read");
        }
    }

    /** A number, or a number written as text; empty for null, absent, NaN and anything else. */
    public static OptionalDouble number(JsonNode node) {
        double value = Double.NaN;
        if (node.isNumber()) {
            value = node.doubleValue();
        } else if (node.isTextual()
                && node.asText().strip().matches("[-+]?\\d{1,15}(\\.\\d*)?([eE][-+]?\\d{1,3})?")) {
            value = Double.parseDouble(node.asText().strip());
        }
        return Double.isFinite(value) ? OptionalDouble.of(value) : OptionalDouble.empty();
    }

    /** Words from outside on one line of at most 160 letters. */
    public static String cut(String text) {
        String line = text.replaceAll("\\s+", " ").strip();
        return line.length() > 160 ? line.substring(0, 157) + "..." : line;
    }

    /** What stands in a place of an answer, on one line: a list or an object as it is written. */
    static String words(JsonNode node) {
        return cut(node.isContainerNode() ? node.toString() : node.asText());
    }

    /** True where nothing was said: absent or null. */
    public static boolean silent(JsonNode node) {
        return node.isMissingNode() || node.isNull();
    }
}
