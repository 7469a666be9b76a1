package rainward.daemon.command;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.datatype.jdk8.Jdk8Module;
import com.fasterxml.jackson.datatype.jsr310.JavaTimeModule;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Results as JSON and as columns of text. */
public final class Sheets {

    private static final ObjectMapper JSON = JsonMapper.builder()
            .addModule(new Jdk8Module())
            .addModule(new JavaTimeModule())
            .disable(SerializationFeature.WRITE_DATES_AS_TIMESTAMPS)
            .enable(SerializationFeature.INDENT_OUTPUT)
            .build();

    private Sheets() {}

    public static String json(Object result) {
        try {
            return JSON.writeValueAsString(result);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("a result cannot be written: " + result.getClass(), e);
        }
    }

    /** Rows in columns as wide as their widest cell, two blanks between; the last one runs free. */
    public static String columns(List<List<String>> rows) {
        int columns = rows.stream().mapToInt(List::size).max().orElse(0);
        int[] width = new int[columns];
        for (List<String> row : rows) {
            for (int c = 0; c < row.size(); c++) {
                width[c] = Math.max(width[c], row.get(c).length());
            }
        }
        List<String> lines = new ArrayList<>();
        for (List<String> row : rows) {
            StringBuilder line = new StringBuilder();
            for (int c = 0; c < row.size(); c++) {
                boolean last = c == row.size() - 1;
                line.append(last ? row.get(c) : padded(row.get(c), width[c] + 2));
            }
            lines.add(line.toString().stripTrailing());
        }
        return String.join(System.lineSeparator(), lines);
    }

    private static String padded(String text, int width) {
        char[] blanks = new char[Math.max(0, width - text.length())];
        Arrays.fill(blanks, ' ');
        return text + new String(blanks);
    }
}
