CREATE TABLE `guest_links` (
	`collection_id` text NOT NULL,
	`id` text NOT NULL,
	`car_id` text NOT NULL,
	`secret_hash` text NOT NULL,
	`guest` text NOT NULL,
	`made_at` text NOT NULL,
	`made_by` text,
	`ends_at` text NOT NULL,
	`ended_at` text,
	PRIMARY KEY(`collection_id`, `id`),
	FOREIGN KEY (`made_by`) REFERENCES `people`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`collection_id`,`car_id`) REFERENCES `cars`(`collection_id`,`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE UNIQUE INDEX `guest_links_secret` ON `guest_links` (`secret_hash`);--> statement-breakpoint
CREATE TABLE `revival_entries` (
	`collection_id` text NOT NULL,
	`id` text NOT NULL,
	`revival_id` text NOT NULL,
	`day` text NOT NULL,
	`said` text NOT NULL,
	`done_by` text NOT NULL,
	`note` text NOT NULL,
	`recorded_on` text NOT NULL,
	`recorded_by` text,
	`withdrawn_on` text,
	PRIMARY KEY(`collection_id`, `id`),
	FOREIGN KEY (`recorded_by`) REFERENCES `people`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`collection_id`,`revival_id`) REFERENCES `revivals`(`collection_id`,`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE INDEX `entries_of_revival` ON `revival_entries` (`collection_id`,`revival_id`);--> statement-breakpoint
CREATE TABLE `revivals` (
	`collection_id` text NOT NULL,
	`id` text NOT NULL,
	`car_id` text NOT NULL,
	`begun_on` text NOT NULL,
	`begun_by` text,
	`last_ran_typed` text NOT NULL,
	`last_ran_from` text,
	`last_ran_to` text,
	`last_ran_by` text NOT NULL,
	`why` text NOT NULL,
	`why_words` text NOT NULL,
	`why_by` text NOT NULL,
	`stood` text NOT NULL,
	`put_away` text NOT NULL,
	`put_away_by` text NOT NULL,
	`ceiling` real,
	`hands` text NOT NULL,
	`note` text NOT NULL,
	`closed_on` text,
	`closed_how` text,
	`closed_by` text,
	PRIMARY KEY(`collection_id`, `id`),
	FOREIGN KEY (`begun_by`) REFERENCES `people`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`closed_by`) REFERENCES `people`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`collection_id`,`car_id`) REFERENCES `cars`(`collection_id`,`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE INDEX `revivals_of_car` ON `revivals` (`collection_id`,`car_id`);--> statement-breakpoint
CREATE TABLE `told_of_revivals` (
	`collection_id` text NOT NULL,
	`person_id` text NOT NULL,
	`revival_id` text NOT NULL,
	`matter` text NOT NULL,
	`said_on` text NOT NULL,
	`ahead` integer NOT NULL,
	`letter_id` text NOT NULL,
	PRIMARY KEY(`collection_id`, `person_id`, `revival_id`, `matter`, `said_on`),
	FOREIGN KEY (`collection_id`,`revival_id`) REFERENCES `revivals`(`collection_id`,`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`collection_id`,`letter_id`) REFERENCES `letters`(`collection_id`,`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE TABLE `walkrounds` (
	`collection_id` text NOT NULL,
	`id` text NOT NULL,
	`car_id` text NOT NULL,
	`day` text NOT NULL,
	`answers` text NOT NULL,
	`by` text NOT NULL,
	`note` text NOT NULL,
	`recorded_on` text NOT NULL,
	`withdrawn_on` text,
	PRIMARY KEY(`collection_id`, `id`),
	FOREIGN KEY (`collection_id`,`car_id`) REFERENCES `cars`(`collection_id`,`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE INDEX `walkrounds_of_car` ON `walkrounds` (`collection_id`,`car_id`,`day`);--> statement-breakpoint
ALTER TABLE `cars` ADD `ours` integer DEFAULT true NOT NULL;--> statement-breakpoint
ALTER TABLE `collections` ADD `currency` text DEFAULT 'USD' NOT NULL;--> statement-breakpoint
ALTER TABLE `collections` ADD `per_dollar` real DEFAULT 1 NOT NULL;--> statement-breakpoint
ALTER TABLE `collections` ADD `labor_low` real DEFAULT 90 NOT NULL;--> statement-breakpoint
ALTER TABLE `collections` ADD `labor_high` real DEFAULT 150 NOT NULL;