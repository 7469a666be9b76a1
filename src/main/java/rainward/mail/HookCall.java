package rainward.mail;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Map;
import rainward.brief.post.Letter;

/**
 * A letter as the body of a webhook call: JSON with {@code event}, {@code repliesTo} where it is a
 * later word on the same thing, {@code writtenAt}, {@code subject}, {@code text} and, where there
 * is one, {@code calendar}.
 */
final class HookCall {

    private static final ObjectMapper JSON = new ObjectMapper();

    private HookCall() {}

    static byte[] bytes(Letter letter) {
        Map<String, String> body = new LinkedHashMap<>();
        body.put("event", letter.event());
        letter.repliesTo().ifPresent(first -> body.put("repliesTo", first));
        body.put(
                "writtenAt",
                letter.written()
                        .at()
                        .atZone(letter.written().zone())
                        .toOffsetDateTime()
                        .toString());
        body.put("subject", letter.subject());
        body.put("text", letter.body().text());
        letter.body().calendar().ifPresent(calendar -> body.put("calendar", calendar));
        try {
            return JSON.writeValueAsString(body).getBytes(StandardCharsets.UTF_8);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("strings make JSON", e);
        }
    }
}
