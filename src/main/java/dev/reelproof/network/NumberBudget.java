package dev.reelproof.network;

/** How many numbers the files of one upload may hold together, and how many they hold so far. */
final class NumberBudget {
    private final int most;
    private long taken;

    NumberBudget(int most) {
        this.most = most;
    }

    int most() {
        return most;
    }

    /** Takes some; says whether they were left. */
    boolean take(int numbers) {
        taken += numbers;
        return taken <= most;
    }
}
