package floorgauge.sampleclips.scene;

import floorgauge.court.track.Team;
import java.util.Objects;

/**
 * An invented person of a scene.
 *
 * @param id unique in the scene, from 1; becomes the track id of the truth
 * @param jerseyNumber 0 to 99, or -1 for none
 * @param name invented
 * @param team kit side, official or staff
 * @param heightMetres 1.4 to 2.3
 * @param build girth over that of an average person of this height, 0.7 to 1.4
 * @param skinRgb skin, 0xRRGGBB
 * @param hairRgb hair, 0xRRGGBB
 * @param kit clothes
 */
public record Person(
        int id,
        int jerseyNumber,
        String name,
        Team team,
        double heightMetres,
        double build,
        int skinRgb,
        int hairRgb,
        Kit kit) {

    public Person {
        Objects.requireNonNull(name, "name");
        Objects.requireNonNull(team, "team");
        Objects.requireNonNull(kit, "kit");
        if (id < 1) {
            throw new IllegalArgumentException("ids count from 1: " + id);
        }
        if (jerseyNumber < -1 || jerseyNumber > 99) {
            throw new IllegalArgumentException("a jersey number lies in 0 to 99: " + jerseyNumber);
        }
        if (!(heightMetres >= 1.4 && heightMetres <= 2.3)) {
            throw new IllegalArgumentException("a height lies in 1.4 to 2.3 m: " + heightMetres);
        }
        if (!(build >= 0.7 && build <= 1.4)) {
            throw new IllegalArgumentException("a build lies in 0.7 to 1.4: " + build);
        }
    }
}
