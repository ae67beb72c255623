import django.db.models.deletion
from django.db import migrations, models


class Migration(migrations.Migration):
    initial = True

    dependencies = []

    operations = [
        migrations.CreateModel(
            name="Machine",
            fields=[
                (
                    "id",
                    models.BigAutoField(
                        auto_created=True, primary_key=True, serialize=False, verbose_name="ID"
                    ),
                ),
                ("slug", models.SlugField(max_length=60)),
                ("name", models.CharField(max_length=200)),
                (
                    "serials",
                    models.JSONField(
                        default=dict, help_text="What is stamped where: engine, frame."
                    ),
                ),
                ("book_name", models.CharField(max_length=200)),
                (
                    "book_text",
                    models.TextField(help_text="The book, so that no file need stay in place."),
                ),
                (
                    "starters",
                    models.JSONField(
                        default=dict,
                        help_text="The text of each starter that the book extends, by its name.",
                    ),
                ),
                ("added_at", models.DateTimeField()),
                ("notes", models.TextField(blank=True)),
                ("withdrawn", models.BooleanField(default=False)),
            ],
            options={
                "ordering": ["slug"],
                "constraints": [
                    models.UniqueConstraint(
                        condition=models.Q(("withdrawn", False)),
                        fields=("slug",),
                        name="one_machine_of_a_name",
                    )
                ],
            },
        ),
        migrations.CreateModel(
            name="JointState",
            fields=[
                (
                    "id",
                    models.BigAutoField(
                        auto_created=True, primary_key=True, serialize=False, verbose_name="ID"
                    ),
                ),
                ("joint", models.CharField(max_length=100)),
                ("word", models.CharField(default="undisturbed", max_length=30)),
                ("since", models.DateField(null=True)),
                ("covered", models.BooleanField(default=False)),
                (
                    "uncovered_on",
                    models.DateField(help_text="When work took the cover off.", null=True),
                ),
                ("bolts_out", models.PositiveSmallIntegerField(null=True)),
                ("bolts_ready", models.PositiveSmallIntegerField(null=True)),
                ("faces_clean", models.BooleanField(default=False)),
                ("gaskets_ready", models.JSONField(default=list)),
                ("thickness_found", models.CharField(max_length=100, null=True)),
                ("sealed_on", models.DateField(null=True)),
                ("leak_checked_on", models.DateField(null=True)),
                ("dry_chalked_on", models.DateField(null=True)),
                (
                    "machine",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="joints",
                        to="workshop.machine",
                    ),
                ),
            ],
            options={
                "constraints": [
                    models.UniqueConstraint(
                        fields=("machine", "joint"), name="one_state_of_a_joint"
                    ),
                    models.CheckConstraint(
                        condition=models.Q(
                            (
                                "word__in",
                                [
                                    "undisturbed",
                                    "to be opened",
                                    "open",
                                    "faces clean",
                                    "gasket ready",
                                    "dry-fitted",
                                    "sealed",
                                    "torqued",
                                    "leak-checked",
                                    "weeping",
                                    "leaking",
                                    "parked open",
                                ],
                            )
                        ),
                        name="joint_word_is_a_trade_word",
                    ),
                ],
            },
        ),
        migrations.CreateModel(
            name="GatePass",
            fields=[
                (
                    "id",
                    models.BigAutoField(
                        auto_created=True, primary_key=True, serialize=False, verbose_name="ID"
                    ),
                ),
                ("gate", models.CharField(max_length=100)),
                ("by", models.CharField(max_length=100)),
                ("at", models.DateTimeField()),
                ("withdrawn", models.BooleanField(default=False)),
                (
                    "machine",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="gates_passed",
                        to="workshop.machine",
                    ),
                ),
            ],
            options={
                "ordering": ["pk"],
                "constraints": [
                    models.UniqueConstraint(
                        condition=models.Q(("withdrawn", False)),
                        fields=("machine", "gate"),
                        name="one_pass_that_counts",
                    )
                ],
            },
        ),
        migrations.CreateModel(
            name="DiaryEntry",
            fields=[
                (
                    "id",
                    models.BigAutoField(
                        auto_created=True, primary_key=True, serialize=False, verbose_name="ID"
                    ),
                ),
                ("act", models.CharField(max_length=60)),
                ("who", models.CharField(max_length=100)),
                ("at", models.DateTimeField()),
                ("says", models.TextField(help_text="One plain sentence.")),
                ("before", models.JSONField(default=dict)),
                ("after", models.JSONField(default=dict)),
                (
                    "touched",
                    models.JSONField(default=list, help_text="The rows in the order of writing."),
                ),
                ("places", models.JSONField(default=list, help_text="What the rows are about.")),
                (
                    "rests_on",
                    models.JSONField(default=list, help_text="Places that had to be as they were."),
                ),
                (
                    "client_key",
                    models.CharField(
                        help_text="Chosen by a sender that may send twice.",
                        max_length=100,
                        null=True,
                        unique=True,
                    ),
                ),
                (
                    "undoes",
                    models.ForeignKey(
                        null=True,
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="undone_by",
                        to="workshop.diaryentry",
                    ),
                ),
                (
                    "machine",
                    models.ForeignKey(
                        null=True,
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="diary",
                        to="workshop.machine",
                    ),
                ),
            ],
            options={
                "verbose_name_plural": "diary entries",
                "ordering": ["pk"],
                "constraints": [
                    models.CheckConstraint(
                        condition=models.Q(("who", ""), _negated=True), name="somebody_did_it"
                    ),
                    models.CheckConstraint(
                        condition=models.Q(("says", ""), _negated=True), name="every_act_says_what"
                    ),
                ],
            },
        ),
        migrations.CreateModel(
            name="AnswerRow",
            fields=[
                (
                    "id",
                    models.BigAutoField(
                        auto_created=True, primary_key=True, serialize=False, verbose_name="ID"
                    ),
                ),
                ("point", models.CharField(max_length=100)),
                ("answer", models.CharField(max_length=200)),
                ("reason", models.TextField(blank=True)),
                ("by", models.CharField(max_length=100)),
                ("at", models.DateTimeField()),
                ("withdrawn", models.BooleanField(default=False)),
                (
                    "machine",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="answers",
                        to="workshop.machine",
                    ),
                ),
            ],
            options={
                "ordering": ["pk"],
                "constraints": [
                    models.UniqueConstraint(
                        condition=models.Q(("withdrawn", False)),
                        fields=("machine", "point"),
                        name="one_answer_that_counts",
                    )
                ],
            },
        ),
        migrations.CreateModel(
            name="PieceState",
            fields=[
                (
                    "id",
                    models.BigAutoField(
                        auto_created=True, primary_key=True, serialize=False, verbose_name="ID"
                    ),
                ),
                ("part", models.CharField(max_length=100)),
                ("piece", models.CharField(blank=True, max_length=100)),
                ("word", models.CharField(default="fitted", max_length=30)),
                ("maker", models.CharField(blank=True, max_length=200)),
                ("size", models.CharField(blank=True, max_length=100)),
                ("proved_pair", models.BooleanField(default=False)),
                ("note", models.TextField(blank=True)),
                ("since", models.DateField(null=True)),
                (
                    "machine",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="pieces",
                        to="workshop.machine",
                    ),
                ),
            ],
            options={
                "constraints": [
                    models.UniqueConstraint(
                        fields=("machine", "part", "piece"), name="one_state_of_a_piece"
                    ),
                    models.CheckConstraint(
                        condition=models.Q(
                            (
                                "word__in",
                                [
                                    "fitted",
                                    "off",
                                    "bagged",
                                    "washed",
                                    "measured",
                                    "passed",
                                    "passed with a note",
                                    "rejected",
                                    "to be made",
                                    "wanted",
                                    "quoted",
                                    "on order",
                                    "in the post",
                                    "in hand",
                                    "out at the machinist",
                                    "out at the bench",
                                    "back and checked",
                                    "dry-fitted",
                                    "built in",
                                    "painted",
                                    "lent",
                                    "parked",
                                    "scrapped",
                                ],
                            )
                        ),
                        name="piece_word_is_a_trade_word",
                    ),
                ],
            },
        ),
        migrations.CreateModel(
            name="ReadingRow",
            fields=[
                (
                    "id",
                    models.BigAutoField(
                        auto_created=True, primary_key=True, serialize=False, verbose_name="ID"
                    ),
                ),
                ("figure", models.CharField(max_length=100)),
                ("piece", models.CharField(blank=True, max_length=100)),
                ("stage", models.CharField(max_length=20)),
                (
                    "typed",
                    models.JSONField(
                        help_text="Each number as it was typed, in the order of the places."
                    ),
                ),
                (
                    "values",
                    models.JSONField(help_text="The numbers understood, in the unit beside."),
                ),
                ("unit", models.CharField(max_length=40)),
                ("instrument", models.JSONField(help_text="Its name, resolution and error.")),
                (
                    "meant",
                    models.BooleanField(
                        default=False, help_text="Kept although it looked like a slip."
                    ),
                ),
                (
                    "each",
                    models.PositiveSmallIntegerField(
                        default=1, help_text="How many readings every number is the mean of."
                    ),
                ),
                ("by", models.CharField(max_length=100)),
                ("at", models.DateTimeField()),
                ("superseded", models.BooleanField(default=False)),
                ("withdrawn", models.BooleanField(default=False)),
                (
                    "machine",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="readings",
                        to="workshop.machine",
                    ),
                ),
            ],
            options={
                "ordering": ["pk"],
                "constraints": [
                    models.UniqueConstraint(
                        condition=models.Q(("superseded", False), ("withdrawn", False)),
                        fields=("machine", "figure", "piece", "stage"),
                        name="one_reading_that_counts",
                    ),
                    models.CheckConstraint(
                        condition=models.Q(("stage__in", ["as found", "as finished"])),
                        name="reading_stage_is_a_trade_word",
                    ),
                    models.CheckConstraint(
                        condition=models.Q(("each__gte", 1)), name="reading_is_the_mean_of_some"
                    ),
                ],
            },
        ),
        migrations.CreateModel(
            name="VerdictRow",
            fields=[
                (
                    "id",
                    models.BigAutoField(
                        auto_created=True, primary_key=True, serialize=False, verbose_name="ID"
                    ),
                ),
                ("figure", models.CharField(max_length=100)),
                ("piece", models.CharField(blank=True, max_length=100)),
                ("stage", models.CharField(max_length=20)),
                (
                    "verdict",
                    models.CharField(
                        blank=True,
                        db_index=True,
                        help_text="Empty where only the size is known.",
                        max_length=20,
                    ),
                ),
                ("value", models.FloatField()),
                ("unit", models.CharField(max_length=40)),
                ("says", models.TextField(blank=True, help_text="The verdict in one line.")),
                (
                    "p",
                    models.FloatField(
                        help_text="Probability that the true value is in limit.", null=True
                    ),
                ),
                ("data", models.JSONField(help_text="The whole verdict with its working.")),
                ("accepted_reason", models.TextField(blank=True)),
                ("accepted_by", models.CharField(blank=True, max_length=100)),
                ("accepted_at", models.DateTimeField(null=True)),
                ("at", models.DateTimeField()),
                ("code_version", models.CharField(max_length=40)),
                ("current", models.BooleanField(default=True)),
                (
                    "machine",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="verdicts",
                        to="workshop.machine",
                    ),
                ),
            ],
            options={
                "ordering": ["pk"],
                "constraints": [
                    models.UniqueConstraint(
                        condition=models.Q(("current", True)),
                        fields=("machine", "figure", "piece", "stage"),
                        name="one_verdict_that_counts",
                    ),
                    models.CheckConstraint(
                        condition=models.Q(("stage__in", ["as found", "as finished"])),
                        name="verdict_stage_is_a_trade_word",
                    ),
                    models.CheckConstraint(
                        condition=models.Q(
                            (
                                "verdict__in",
                                [
                                    "good",
                                    "serviceable",
                                    "borderline",
                                    "worn out",
                                    "not measured",
                                    "",
                                ],
                            )
                        ),
                        name="verdict_is_a_trade_word",
                    ),
                    models.CheckConstraint(
                        condition=models.Q(
                            ("p__isnull", True),
                            models.Q(("p__gte", 0), ("p__lte", 1)),
                            _connector="OR",
                        ),
                        name="verdict_p_is_a_probability",
                    ),
                    models.CheckConstraint(
                        condition=models.Q(
                            models.Q(
                                ("accepted_at__isnull", True),
                                ("accepted_by", ""),
                                ("accepted_reason", ""),
                            ),
                            models.Q(
                                models.Q(("accepted_reason", ""), _negated=True),
                                models.Q(("accepted_by", ""), _negated=True),
                                ("accepted_at__isnull", False),
                            ),
                            _connector="OR",
                        ),
                        name="accepted_by_a_person_with_reason_and_date",
                    ),
                ],
            },
        ),
    ]
