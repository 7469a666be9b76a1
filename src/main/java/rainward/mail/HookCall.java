package rainward.mail;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.ZoneId;
import java.util.LinkedHashMap;
import java.util.Map;
import rainward.brief.post.Letter;
import rainward.brief.post.Line;

/**
 * A letter as the body of a webhook call: JSON with {@code event}, {@code repliesTo} where it is a
 * later word on the same thing, {@code writtenAt}, {@code subject}, {@code text}, {@code lines}
 * (one for each piece of work: {@code rank}, {@code field}, {@code property}, {@code stage},
 * {@code machine}, {@code person}, {@code mix}, {@code from}, {@code to}, {@code chance}; in an
 * alert {@code field}, {@code plannedStart}, {@code lastSafeStart}, {@code chance}) and, where
 * there is one, {@code calendar}.
 */
final class HookCall {

    private static final ObjectMapper JSON = new ObjectMapper();

    private HookCall() {}

    static byte[] bytes(Letter letter) {
        Map<String, Object> body = new LinkedHashMap<>();
        body.put("event", letter.event());
        letter.earlier().stream().findFirst().ifPresent(first -> body.put("repliesTo", first));
        body.put(
                "writtenAt",
                letter.written()
                        .at()
                        .atZone(letter.written().zone())
                        .toOffsetDateTime()
                        .toString());
        body.put("subject", letter.subject());
        body.put("text", letter.body().text());
        body.put(
                "lines",
                letter.body().lines().stream()
                        .map(line -> line(line, letter.written().zone()))
                        .toList());
        letter.body().calendar().ifPresent(calendar -> body.put("calendar", calendar));
        try {
            return JSON.writeValueAsString(body).getBytes(StandardCharsets.UTF_8);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("strings make JSON", e);
        }
    }

    private static Map<String, Object> line(Line line, ZoneId zone) {
        Map<String, Object> shown = new LinkedHashMap<>();
        if (line instanceof Line.Work work) {
            shown.put("rank", work.rank());
            shown.put("field", work.field());
            shown.put("property", work.property());
            shown.put("stage", work.task().stage());
            shown.put("machine", work.task().machine());
            shown.put("person", work.task().person());
            work.task().mix().ifPresent(mix -> shown.put("mix", mix));
            shown.put("from", time(work.from(), zone));
            shown.put("to", time(work.to(), zone));
        } else if (line instanceof Line.Fit fit) {
            shown.put("field", fit.field());
            shown.put("plannedStart", time(fit.plannedStart(), zone));
            shown.put("lastSafeStart", time(fit.lastSafeStart(), zone));
        }
        line.chance().ifPresent(chance -> shown.put("chance", chance));
        return shown;
    }

    private static String time(Instant at, ZoneId zone) {
        return at.atZone(zone).toOffsetDateTime().toString();
    }
}
