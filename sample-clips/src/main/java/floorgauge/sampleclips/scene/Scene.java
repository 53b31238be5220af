package floorgauge.sampleclips.scene;

import floorgauge.court.rules.RuleSet;
import java.util.List;

/** A stretch of play that can be asked for its state at any instant; the same answer every time, from any thread. */
public interface Scene {

    /** The scenario's name, unique in the library. */
    String name();

    RuleSet rules();

    double durationSeconds();

    /** Everyone who appears, in order of id. */
    List<Person> people();

    /** @param timeSeconds 0 to {@link #durationSeconds()} */
    SceneState at(double timeSeconds);
}
