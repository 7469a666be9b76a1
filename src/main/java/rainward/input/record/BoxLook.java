package rainward.input.record;

import rainward.farm.Require;
import rainward.input.seeder.BoxCheck;

/**
 * A look into the boxes, as it was written down.
 *
 * @param seeder its name
 * @param mix in the boxes
 * @param check what was found
 */
public record BoxLook(String seeder, String mix, BoxCheck check) {

    public BoxLook {
        Require.named("seeder", seeder);
        Require.named("mix", mix);
    }
}
