package dev.reelproof.seal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

/** What holds of every tree, whatever its size. */
class MerkleTreePropertiesTest {
    private static final int ALL_SIZES_UP_TO = 40;

    private static List<Hash> leaves(int count) {
        List<Hash> leaves = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            leaves.add(TreeHashing.leaf(ByteBuffer.allocate(4).putInt(i).array()));
        }
        return leaves;
    }

    @Test
    void everyLeafsPathLeadsToTheRootAndNoOtherLeafsDoes() {
        for (int size = 1; size <= ALL_SIZES_UP_TO; size++) {
            List<Hash> leaves = leaves(size);
            MerkleTree tree = PublishedTree.of(leaves);
            for (int index = 0; index < size; index++) {
                List<Hash> path = tree.inclusionPath(index);
                for (int other = 0; other < size; other++) {
                    assertEquals(
                            other == index,
                            InclusionPath.holds(leaves.get(other), index, size, path, tree.root()),
                            other + " at " + index + " of " + size);
                    if (other != index) {
                        assertFalse(InclusionPath.holds(leaves.get(index), other, size, path, tree.root()));
                    }
                }
            }
        }
    }

    @Test
    void everyTreeIsConsistentWithEveryEarlierOneAndWithNoOther() {
        List<Hash> leaves = leaves(ALL_SIZES_UP_TO);
        for (int second = 1; second <= ALL_SIZES_UP_TO; second++) {
            MerkleTree later = PublishedTree.of(leaves.subList(0, second));
            for (int first = 1; first <= second; first++) {
                Hash earlier = PublishedTree.of(leaves.subList(0, first)).root();
                List<Hash> path = later.consistencyPath(first);
                assertTrue(ConsistencyPath.holds(first, earlier, second, later.root(), path), first + " to " + second);
                List<Hash> changed = new ArrayList<>(leaves.subList(0, first));
                changed.set(first - 1, TreeHashing.EMPTY);
                Hash forked = PublishedTree.of(changed).root();
                assertFalse(ConsistencyPath.holds(first, forked, second, later.root(), path), first + " to " + second);
            }
        }
    }

    @Property(tries = 60)
    void aGrowingTreeKeepsWhatALaterOneNeeds(@ForAll @IntRange(min = 1, max = 700) int size) {
        Map<String, Hash> kept = new HashMap<>();
        Frontier frontier = Frontier.EMPTY;
        for (Hash leaf : leaves(size)) {
            Frontier.Appended appended = frontier.append(leaf);
            appended.completed().forEach(each -> kept.put(each.level() + "/" + each.index(), each.hash()));
            frontier = appended.frontier();
        }
        MerkleTree tree = new MerkleTree(size, (level, index) -> kept.get(level + "/" + index));
        assertEquals(frontier, Frontier.of(tree));
        assertEquals(frontier.root(), tree.root());
        assertEquals(PublishedTree.of(leaves(size)).root(), tree.root());
    }

    @Property(tries = 200)
    void aPathWithOneHashMoreLessOrChangedLeadsNowhere(
            @ForAll @IntRange(min = 2, max = 300) int size, @ForAll @IntRange(min = 0, max = 1000) int choice) {
        int index = choice % size;
        List<Hash> leaves = leaves(size);
        MerkleTree tree = PublishedTree.of(leaves);
        List<Hash> path = tree.inclusionPath(index);
        List<Hash> longer = new ArrayList<>(path);
        longer.add(TreeHashing.EMPTY);
        List<Hash> changed = new ArrayList<>(path);
        changed.set(choice % path.size(), TreeHashing.EMPTY);
        for (List<Hash> wrong : List.of(longer, changed, path.subList(0, path.size() - 1))) {
            assertFalse(InclusionPath.holds(leaves.get(index), index, size, wrong, tree.root()));
        }
    }
}
