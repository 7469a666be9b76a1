package rainward.daemon.board;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rainward.board.house.Takes.Taken;
import rainward.store.Books;

/** Forms that were taken lately, so that one that is sent twice is taken once. */
final class FormBook {

    private static final String NAME = "board forms";

    /** A telephone that was out of reach for a day still finds its forms here. */
    private static final int KEPT = 300;

    private FormBook() {}

    /** A form and what came of it. */
    record Form(String key, Taken taken) {}

    /** All of them, the oldest first. */
    record Forms(List<Form> forms) {}

    static Optional<Taken> taken(Books books, String key) {
        return all(books).stream()
                .filter(form -> form.key().equals(key))
                .map(Form::taken)
                .findFirst();
    }

    static void keep(Books books, Form form, Instant at) {
        List<Form> forms = new ArrayList<>(all(books));
        forms.add(form);
        int tooMany = Math.max(0, forms.size() - KEPT);
        books.lastKnown().put(NAME, at, new Forms(forms.subList(tooMany, forms.size())));
    }

    private static List<Form> all(Books books) {
        return books.lastKnown().find(NAME, Forms.class).map(Forms::forms).orElse(List.of());
    }
}
