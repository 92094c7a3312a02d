package dev.reelproof.wording;

import dev.reelproof.judgement.Obstacle;
import java.util.Map;

/**
 * What stands in the way of judging a requirement, in words.
 *
 * @param kind the word of its kind
 * @param parts what the sentence names
 * @param sentence what it is; without a full stop
 * @param remedy what completes the measurement
 */
public record ObstacleWords(String kind, Map<String, String> parts, String sentence, String remedy) {

    static ObstacleWords of(Obstacle obstacle, Catalogue words) {
        return new ObstacleWords(
                obstacle.kind().id(),
                obstacle.parts(),
                words.obstacle(obstacle.kind(), PrintedParts.of(obstacle)),
                remedy(obstacle.kind(), words));
    }

    static String remedy(Obstacle.Kind kind, Catalogue words) {
        return words.text("remedy." + kind.id());
    }
}
