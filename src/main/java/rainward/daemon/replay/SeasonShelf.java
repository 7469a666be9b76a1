package rainward.daemon.replay;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.datatype.jsr310.JavaTimeModule;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.LinkedHashMap;
import java.util.Map;
import rainward.daemon.office.Refusal;
import rainward.replay.Gains;

/** Seasons that were run, a line each, so that a run that was stopped goes on where it was. */
final class SeasonShelf {

    private static final ObjectMapper JSON = JsonMapper.builder()
            .addModule(new JavaTimeModule())
            .disable(SerializationFeature.WRITE_DATES_AS_TIMESTAMPS)
            .build();

    private final Path file;

    /** The shelf of a folder, which is made where there is none. */
    SeasonShelf(Path folder) {
        try {
            Files.createDirectories(folder);
        } catch (IOException e) {
            throw Refusal.badInput("Nothing can be kept in " + folder + ": name a folder that can"
                    + " be written with --keep.");
        }
        this.file = folder.resolve("seasons.jsonl");
    }

    /** Seasons by key; a line that was cut off by a power cut is left out and run again. */
    Map<String, Gains.Tried> known() {
        Map<String, Gains.Tried> known = new LinkedHashMap<>();
        if (Files.exists(file)) {
            try {
                for (String line : Files.readAllLines(file)) {
                    read(line, known);
                }
            } catch (IOException e) {
                throw Refusal.badInput(file + " cannot be read: move it away to begin anew.");
            }
        }
        return known;
    }

    private static void read(String line, Map<String, Gains.Tried> known) {
        try {
            Gains.Tried season = JSON.readValue(line, Gains.Tried.class);
            known.put(season.asItIs().key(), season);
        } catch (JsonProcessingException e) {
            // Only the last line can be cut off; its season is run again.
        }
    }

    /** Keeps one more. */
    synchronized void keep(Gains.Tried season) {
        try {
            Files.writeString(
                    file,
                    JSON.writeValueAsString(season) + "\n",
                    StandardCharsets.UTF_8,
                    StandardOpenOption.CREATE,
                    StandardOpenOption.APPEND);
        } catch (IOException e) {
            throw Refusal.badInput(file + " cannot be written: is the disk full?");
        }
    }
}
