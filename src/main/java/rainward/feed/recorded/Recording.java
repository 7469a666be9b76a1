package rainward.feed.recorded;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.MissingNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import rainward.feed.reading.Json;
import rainward.feed.reading.Unreadable;
import rainward.feed.wire.Wire.Reply;

/**
 * A recorded response: the bare body, a dump of header lines, or both in one JSON object.
 *
 * @param file path below the folder
 * @param reply as it will be served
 * @param root its body as JSON; missing where it is none
 */
record Recording(String file, Reply reply, JsonNode root) {

    static Recording of(Path folder, Path path) throws IOException {
        String file = folder.relativize(path).toString().replace('\\', '/');
        // Bytes that are no text must reach the client, as a service would send them.
        String text = new String(Files.readAllBytes(path), StandardCharsets.UTF_8);
        if (text.startsWith("HTTP/")) {
            return dump(file, text);
        }
        JsonNode root = json(text);
        if (root.path("status_code").isInt() && root.has("data")) {
            Map<String, String> headers = new HashMap<>(Map.of("content-type", "application/json"));
            root.path("headers")
                    .properties()
                    .forEach(h -> headers.put(
                            h.getKey().toLowerCase(Locale.ROOT), h.getValue().asText()));
            JsonNode body = root.path("data");
            int status = root.path("status_code").asInt();
            return new Recording(file, reply(status, headers, body.toString()), body);
        }
        String restored = TimeTemplate.restored(text);
        return bare(file, restored, json(restored));
    }

    /** A bare body; an error tells its status itself. */
    private static Recording bare(String file, String text, JsonNode root) {
        int said = root.path("status").asInt(200);
        boolean problem = root.has("title") && said >= 400;
        int status = problem ? said : root.path("error").asBoolean(false) ? 400 : 200;
        String type = problem ? "application/problem+json" : "application/geo+json";
        return new Recording(file, reply(status, Map.of("content-type", type), text), root);
    }

    private static Recording dump(String file, String text) {
        int end = text.replace("\r", "").indexOf("\n\n");
        String clean = text.replace("\r", "");
        String head = end < 0 ? clean : clean.substring(0, end);
        String body = end < 0 ? "" : clean.substring(end + 2);
        String[] lines = head.split("\n", -1);
        Map<String, String> headers = new HashMap<>();
        for (int i = 1; i < lines.length; i++) {
            int colon = lines[i].indexOf(':');
            if (colon > 0) {
                headers.put(
                        lines[i].substring(0, colon).strip().toLowerCase(Locale.ROOT),
                        lines[i].substring(colon + 1).strip());
            }
        }
        String[] first = lines[0].split("\\s+", -1);
        int status =
                first.length > 1 && first[1].matches("\\d{3}") ? Integer.parseInt(first[1]) : 500;
        return new Recording(file, reply(status, headers, body), json(body));
    }

    private static Reply reply(int status, Map<String, String> headers, String body) {
        return new Reply(status, headers, body.getBytes(StandardCharsets.UTF_8));
    }

    private static JsonNode json(String text) {
        try {
            return Json.read(text.getBytes(StandardCharsets.UTF_8));
        } catch (Unreadable e) {
            return MissingNode.getInstance();
        }
    }

    /** The same recording with one part of a list as its body. */
    Recording with(JsonNode body) {
        return new Recording(file, reply(reply.status(), reply.headers(), body.toString()), body);
    }

    boolean isError() {
        return reply.status() >= 400;
    }
}
