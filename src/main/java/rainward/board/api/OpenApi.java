package rainward.board.api;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.github.victools.jsonschema.generator.Option;
import com.github.victools.jsonschema.generator.OptionPreset;
import com.github.victools.jsonschema.generator.SchemaGenerator;
import com.github.victools.jsonschema.generator.SchemaGeneratorConfigBuilder;
import com.github.victools.jsonschema.generator.SchemaVersion;
import java.lang.reflect.Type;
import java.util.List;
import java.util.Locale;
import rainward.board.house.Saying;
import rainward.board.house.Sheet;
import rainward.board.house.Takes;

/** The OpenAPI 3.1 document, made from the types that are answered, so that it cannot go astray. */
final class OpenApi {

    private final SchemaGenerator schemas = new SchemaGenerator(new SchemaGeneratorConfigBuilder(
                    Json.MAPPER, SchemaVersion.DRAFT_2020_12, OptionPreset.PLAIN_JSON)
            .with(
                    Option.FLATTENED_OPTIONALS,
                    Option.ADDITIONAL_FIXED_TYPES,
                    Option.EXTRA_OPEN_API_FORMAT_VALUES,
                    Option.INLINE_ALL_SCHEMAS)
            .without(Option.SCHEMA_VERSION_INDICATOR)
            .build());

    private final ObjectNode document = Json.MAPPER.createObjectNode();

    private OpenApi() {}

    static String of(List<Sheet> sheets) {
        return new OpenApi().write(sheets);
    }

    private String write(List<Sheet> sheets) {
        document.put("openapi", "3.1.0");
        document.putObject("info")
                .put("title", "Rainward board")
                .put("version", "1")
                .put(
                        "description",
                        "The results that the commands print with --json, and words taken down as"
                                + " on the pages. Times are local with their offset, quantities SI"
                                + " with the unit in the name.");
        ObjectNode paths = document.putObject("paths");
        for (Sheet sheet : sheets) {
            ObjectNode responses = get(paths, "/api/1/" + sheet.name(), sheet.says(), sheet.type());
            answer(
                    responses,
                    "503",
                    "The first order is being worked out; ask again.",
                    Takes.Taken.class);
        }
        get(
                paths,
                "/api/1/session",
                "Who asks, and the token that words carry.",
                Api.Session.class);
        ObjectNode health = get(paths, "/health", "Whether the service is well.", Api.Health.class);
        answer(health, "503", "Something is to be mended.", Api.Health.class);
        say(paths);
        return Json.of(document);
    }

    private ObjectNode get(ObjectNode paths, String path, String says, Type type) {
        ObjectNode get = paths.putObject(path).putObject("get");
        get.put("summary", says).put("operationId", name(path));
        ObjectNode responses = get.putObject("responses");
        answer(responses, "200", says, type);
        return responses;
    }

    private void say(ObjectNode paths) {
        ObjectNode post = paths.putObject("/api/1/say").putObject("post");
        post.put("summary", "Takes a word down; told twice with one key, it stands there once.")
                .put("operationId", "say");
        ArrayNode parameters = post.putArray("parameters");
        ObjectNode token = parameters.addObject();
        token.put("name", "X-Rainward-Token").put("in", "header").put("required", true);
        token.putObject("schema").put("type", "string");
        post.putObject("requestBody")
                .put("required", true)
                .putObject("content")
                .putObject("application/json")
                .set("schema", schemas.generateSchema(Api.Said.class));
        ObjectNode responses = post.putObject("responses");
        answer(responses, "200", "Written, or so already.", Takes.Taken.class);
        answer(responses, "400", "A part is missing, or there is no such act.", Takes.Taken.class);
        answer(responses, "422", "It cannot be; the words say why.", Takes.Taken.class);
        post.put(
                "description",
                "Acts: "
                        + String.join(
                                ", ",
                                java.util.Arrays.stream(Saying.Act.values())
                                        .map(act -> act.name().toLowerCase(Locale.ROOT))
                                        .toList()));
    }

    private void answer(ObjectNode responses, String status, String says, Type type) {
        ObjectNode answer = responses.putObject(status);
        answer.put("description", says);
        answer.putObject("content")
                .putObject("application/json")
                .set("schema", schemas.generateSchema(type));
    }

    private static String name(String path) {
        return path.replaceFirst("^/(api/1/)?", "");
    }
}
