package rainward.store.row;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JavaType;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.datatype.jdk8.Jdk8Module;
import com.fasterxml.jackson.datatype.jsr310.JavaTimeModule;

import java.util.List;
import java.util.Map;

/** Records as text, for columns that are read whole. */
public final class Json {

    private static final ObjectMapper MAPPER = JsonMapper.builder()
            .addModule(new Jdk8Module())
            .addModule(new JavaTimeModule())
            .disable(SerializationFeature.WRITE_DATES_AS_TIMESTAMPS)
            // A later version may know more than an earlier one wrote, and the other way round.
            .disable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
            .build();

    private Json() {}

    public static String write(Object value) {
        try {
            return MAPPER.writeValueAsString(value);
        } catch (JsonProcessingException e) {
            throw new IllegalArgumentException("cannot be kept: " + value.getClass(), e);
        }
    }

    public static <T> T read(String text, Class<T> type) {
        return read(text, MAPPER.constructType(type));
    }

    public static <T> List<T> readList(String text, Class<T> type) {
        return read(text, MAPPER.getTypeFactory().constructCollectionType(List.class, type));
    }

    /** A map of texts to texts, for instance headers. */
    public static Map<String, String> readTexts(String text) {
        return read(
                text,
                MAPPER.getTypeFactory().constructMapType(Map.class, String.class, String.class));
    }

    /** The type that is asked for comes along as a value. */
    @SuppressWarnings("TypeParameterUnusedInFormals")
    private static <T> T read(String text, JavaType type) {
        try {
            return MAPPER.readValue(text, type);
        } catch (JsonProcessingException e) {
            throw StoreException.damaged(
                    "a stored " + type.getRawClass().getSimpleName() + " cannot be read ("
                            + e.getOriginalMessage() + ")",
                    e);
        }
    }
}
