package rainward.mail;

import rainward.brief.post.Outgoing;

/** Hands one message over, over one channel. */
public interface Courier {

    /** Tries once; a bad world is an outcome, never an exception. */
    Delivery deliver(Outgoing message);
}
