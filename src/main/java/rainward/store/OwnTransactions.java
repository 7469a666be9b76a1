package rainward.store;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.function.Consumer;
import rainward.brief.post.FailedTry;
import rainward.brief.post.Outbox;
import rainward.brief.post.OutboxRow;
import rainward.store.row.Trouble;
import rainward.weather.source.HostPauses;
import rainward.weather.source.LastGoodCopies;

/**
 * Books of the store for callers that know nothing of transactions: each call is one.
 *
 * @param store whose books they are
 */
record OwnTransactions(Store store) {

    private void write(Consumer<Books> work) {
        store.inTransaction(books -> {
            work.accept(books);
            return Optional.empty();
        });
    }

    Outbox outbox() {
        return new Outbox() {
            @Override
            public Optional<OutboxRow> claim(Instant now, Duration hold) {
                return store.inTransaction(books -> books.outbox().claim(now, hold));
            }

            @Override
            public void markSent(long id, Instant at, String serverSaid) {
                write(books -> books.outbox().markSent(id, at, serverSaid));
            }

            @Override
            public void markFailed(long id, FailedTry failure) {
                write(books -> books.outbox().markFailed(id, failure));
            }
        };
    }

    LastGoodCopies copies() {
        return new LastGoodCopies() {
            @Override
            public Optional<Copy> find(String address) {
                return store.read(books -> books.copies().find(address));
            }

            @Override
            public void keep(Copy copy) {
                write(books -> books.copies().keep(copy));
            }
        };
    }

    HostPauses pauses() {
        return new HostPauses() {
            @Override
            public Optional<Trouble> find(String host) {
                return store.read(books -> books.pauses().find(host));
            }

            @Override
            public void keep(Trouble trouble) {
                write(books -> books.pauses().keep(trouble));
            }

            @Override
            public void clear(String host) {
                write(books -> books.pauses().clear(host));
            }
        };
    }
}
