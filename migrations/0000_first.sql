CREATE TABLE `attempts` (
	`collection_id` text NOT NULL,
	`letter_id` text NOT NULL,
	`at` text NOT NULL,
	`ok` integer NOT NULL,
	`answer` text NOT NULL,
	PRIMARY KEY(`collection_id`, `letter_id`, `at`),
	FOREIGN KEY (`collection_id`,`letter_id`) REFERENCES `letters`(`collection_id`,`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE TABLE `cars` (
	`collection_id` text NOT NULL,
	`id` text NOT NULL,
	`name` text NOT NULL,
	`built_typed` text NOT NULL,
	`built_edtf` text,
	`built_from` text,
	`built_to` text,
	`traits` text NOT NULL,
	`note` text NOT NULL,
	`added_on` text NOT NULL,
	PRIMARY KEY(`collection_id`, `id`),
	FOREIGN KEY (`collection_id`) REFERENCES `collections`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE TABLE `claims` (
	`collection_id` text NOT NULL,
	`id` text NOT NULL,
	`part_id` text NOT NULL,
	`clock` text NOT NULL,
	`said` text NOT NULL,
	`typed` text NOT NULL,
	`edtf` text,
	`from_day` text,
	`to_day` text,
	`evidence` text NOT NULL,
	`km` integer,
	`note` text NOT NULL,
	`recorded_on` text NOT NULL,
	`recorded_by` text,
	`withdrawn_on` text,
	PRIMARY KEY(`collection_id`, `id`),
	FOREIGN KEY (`recorded_by`) REFERENCES `people`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`collection_id`,`part_id`) REFERENCES `parts`(`collection_id`,`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE INDEX `claims_of_part` ON `claims` (`collection_id`,`part_id`) WHERE withdrawn_on is null;--> statement-breakpoint
CREATE TABLE `collections` (
	`id` text PRIMARY KEY NOT NULL,
	`name` text NOT NULL,
	`time_zone` text NOT NULL
);
--> statement-breakpoint
CREATE TABLE `letters` (
	`collection_id` text NOT NULL,
	`id` text NOT NULL,
	`person_id` text NOT NULL,
	`kind` text NOT NULL,
	`day` text NOT NULL,
	`recipient` text NOT NULL,
	`subject` text NOT NULL,
	`text` text NOT NULL,
	`html` text NOT NULL,
	`message_id` text NOT NULL,
	`state` text NOT NULL,
	`tries` integer NOT NULL,
	`next_try_at` text NOT NULL,
	`lease_until` text,
	`written_at` text NOT NULL,
	`sent_at` text,
	PRIMARY KEY(`collection_id`, `id`),
	FOREIGN KEY (`collection_id`) REFERENCES `collections`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`person_id`) REFERENCES `people`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE INDEX `letters_waiting` ON `letters` (`next_try_at`) WHERE state in ('waiting', 'sending');--> statement-breakpoint
CREATE UNIQUE INDEX `letters_message` ON `letters` (`message_id`);--> statement-breakpoint
CREATE TABLE `memberships` (
	`collection_id` text NOT NULL,
	`person_id` text NOT NULL,
	`letters` integer NOT NULL,
	PRIMARY KEY(`collection_id`, `person_id`),
	FOREIGN KEY (`collection_id`) REFERENCES `collections`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`person_id`) REFERENCES `people`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE TABLE `odometer` (
	`collection_id` text NOT NULL,
	`car_id` text NOT NULL,
	`day` text NOT NULL,
	`km` integer NOT NULL,
	PRIMARY KEY(`collection_id`, `car_id`, `day`),
	FOREIGN KEY (`collection_id`,`car_id`) REFERENCES `cars`(`collection_id`,`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE TABLE `overrides` (
	`collection_id` text NOT NULL,
	`id` text NOT NULL,
	`car_id` text,
	`kind` text NOT NULL,
	`authority` text NOT NULL,
	`look_from` integer,
	`replace_by` integer,
	`replace_by_km` integer,
	`note` text NOT NULL,
	`set_on` text NOT NULL,
	`ended_on` text,
	PRIMARY KEY(`collection_id`, `id`),
	FOREIGN KEY (`collection_id`) REFERENCES `collections`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE TABLE `parts` (
	`collection_id` text NOT NULL,
	`id` text NOT NULL,
	`car_id` text NOT NULL,
	`kind` text NOT NULL,
	`position` text,
	`note` text NOT NULL,
	`opened_on` text NOT NULL,
	`closed_on` text,
	`closed_why` text,
	`replaces` text,
	PRIMARY KEY(`collection_id`, `id`),
	FOREIGN KEY (`collection_id`,`car_id`) REFERENCES `cars`(`collection_id`,`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE INDEX `parts_of_car` ON `parts` (`collection_id`,`car_id`,`id`);--> statement-breakpoint
CREATE TABLE `people` (
	`id` text PRIMARY KEY NOT NULL,
	`name` text NOT NULL,
	`email` text,
	`date_order` text NOT NULL
);
--> statement-breakpoint
CREATE TABLE `said` (
	`collection_id` text NOT NULL,
	`person_id` text NOT NULL,
	`part_id` text NOT NULL,
	`stage` text NOT NULL,
	`said_on` text NOT NULL,
	`ahead` integer NOT NULL,
	`letter_id` text NOT NULL,
	PRIMARY KEY(`collection_id`, `person_id`, `part_id`, `stage`, `said_on`),
	FOREIGN KEY (`collection_id`,`part_id`) REFERENCES `parts`(`collection_id`,`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`collection_id`,`letter_id`) REFERENCES `letters`(`collection_id`,`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE TABLE `sweeps` (
	`collection_id` text NOT NULL,
	`day` text NOT NULL,
	`finished_at` text NOT NULL,
	PRIMARY KEY(`collection_id`, `day`),
	FOREIGN KEY (`collection_id`) REFERENCES `collections`(`id`) ON UPDATE no action ON DELETE no action
);
