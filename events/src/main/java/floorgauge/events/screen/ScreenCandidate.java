package floorgauge.events.screen;

import floorgauge.events.play.PlayerPath;
import java.util.Optional;

/**
 * A user passing near a possible screener.
 *
 * @param screener S
 * @param user U
 * @param userDefender D, who guarded U beforehand
 * @param screenerDefender E, who guarded S beforehand; empty where nobody did
 * @param pass index at which U and S are nearest
 */
record ScreenCandidate(
        PlayerPath screener,
        PlayerPath user,
        PlayerPath userDefender,
        Optional<PlayerPath> screenerDefender,
        int pass) {}
